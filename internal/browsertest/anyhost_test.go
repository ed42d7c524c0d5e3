//go:build browser

package browsertest

import (
	"bufio"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"wideberth/internal/site"
)

// The folder that the site command leaves works on another server than ours, deep
// under its address, without twins, without headers, and with the wrong type for
// the programs: a verdict, a map
// of the second solver, the embed.
func TestAnyHost(t *testing.T) {
	t.Parallel()
	root, err := os.OpenRoot(publicDir)
	if err != nil {
		t.Fatal(err)
	}
	defer root.Close()
	dir := t.TempDir()
	if err := (site.Export{}).Write(root.FS(), filepath.Join(dir, "some", "where else")); err != nil {
		t.Fatal(err)
	}
	node := exec.Command("node", "plainserver.mjs", dir)
	out, err := node.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := node.Start(); err != nil {
		t.Fatalf("no Node, run make deps first: %v", err)
	}
	t.Cleanup(func() {
		node.Process.Kill()
		node.Wait()
	})
	home, err := bufio.NewReader(out).ReadString('\n')
	if err != nil {
		t.Fatal(err)
	}
	tb := open(t, noGL, desktop)
	tb.origin = strings.TrimSpace(home)
	tb.goTo("/some/where%20else" + light)
	tb.ready()
	if verdict := tb.verdict(); !strings.Contains(verdict, "Tall guest") {
		t.Errorf("the verdict is %q", verdict)
	}
	tb.openSheet("stand")
	tb.goTo("/some/where%20else/embed.html")
	eval[bool](tb, `(document.querySelector("#swing").click(), true)`)
	tb.until("the embed's swing", `document.documentElement.dataset.state === "ready"`)
}
