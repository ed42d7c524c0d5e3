package main

import (
	"bufio"
	"bytes"
	"context"
	"io"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

func TestServe(t *testing.T) {
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "index.html"), []byte("the page"), 0o644); err != nil {
		t.Fatal(err)
	}
	taken, err := net.Listen("tcp", "localhost:0")
	if err != nil {
		t.Fatal(err)
	}
	defer taken.Close()

	ctx, stop := context.WithCancel(t.Context())
	pipe, out := io.Pipe()
	code := make(chan int)
	var errOut bytes.Buffer
	go func() {
		code <- run(ctx, []string{"serve", "-addr", taken.Addr().String(), "-dir", dir}, nil, out, &errOut)
	}()
	line, err := bufio.NewReader(pipe).ReadString('\n')
	if err != nil {
		t.Fatal(err)
	}
	address := regexp.MustCompile(`http://\S+`).FindString(line)
	if address == "" || strings.Contains(address, taken.Addr().String()) {
		t.Fatalf("serve with its port taken printed %q, want an address on another port", line)
	}
	res, err := http.Get(address)
	if err != nil {
		t.Fatal(err)
	}
	defer res.Body.Close()
	if body, _ := io.ReadAll(res.Body); string(body) != "the page" {
		t.Errorf("GET %s = %q, want the page", address, body)
	}
	stop()
	if got := <-code; got != exitClear {
		t.Errorf("serve = %d after an interrupt, want %d; stderr %q", got, exitClear, &errOut)
	}
}

// An interrupt ends the server also while somebody takes a file slowly.
func TestServeStalled(t *testing.T) {
	listener, err := net.Listen("tcp", "localhost:0")
	if err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(t.Context())
	under := make(chan struct{})
	handler := http.HandlerFunc(func(_ http.ResponseWriter, r *http.Request) {
		close(under)
		<-r.Context().Done()
	})
	go http.Get("http://" + listener.Addr().String())
	go func() {
		<-under
		stop()
	}()
	if err := serveUntil(ctx, listener, handler); err != nil {
		t.Errorf("serveUntil = %v after an interrupt, want nothing", err)
	}
}
