package webbuild

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"sync"
	"time"

	"github.com/andybalholm/brotli"
)

// BestQuality is the highest brotli quality; what the budgets are stated in.
const BestQuality = 11

// windowBits is brotli's largest standard window (16 MB): a program of 10 MB
// repeats itself across more than the default 4 MB.
const windowBits = 24

// compressAll writes the twins of the files in out, several at a time: at the
// best quality a large program takes most of a minute.
func compressAll(out, cache string, files []string, quality int) (Manifest, error) {
	if err := os.MkdirAll(cache, 0o755); err != nil {
		return nil, err
	}
	results := make([]Built, len(files))
	errs := make([]error, len(files))
	var work sync.WaitGroup
	for i, name := range files {
		work.Go(func() {
			results[i], errs[i] = compressFile(filepath.Join(out, name), cache, quality)
		})
	}
	work.Wait()
	manifest := Manifest{}
	for i, name := range files {
		if errs[i] != nil {
			return nil, fmt.Errorf("compressing %s: %w", name, errs[i])
		}
		manifest[name] = results[i]
	}
	return manifest, nil
}

// compressFile writes file.br and file.gz beside file.
func compressFile(file, cache string, quality int) (Built, error) {
	plain, err := os.ReadFile(file)
	if err != nil {
		return Built{}, err
	}
	hash := hashOf(plain)
	br, err := cached(cache, hash, quality, plain)
	if err != nil {
		return Built{}, err
	}
	gz, err := gzipped(plain)
	if err != nil {
		return Built{}, err
	}
	for suffix, twin := range map[string][]byte{".br": br, ".gz": gz} {
		if err := install(file+suffix, twin); err != nil {
			return Built{}, err
		}
		if err := freshen(file+suffix, file); err != nil {
			return Built{}, err
		}
	}
	return Built{Bytes: len(plain), Gzip: len(gz), Brotli: len(br), Hash: short(hash)}, nil
}

// hashOf is the SHA-256 of a file's content, in hex.
func hashOf(plain []byte) string {
	sum := sha256.Sum256(plain)
	return hex.EncodeToString(sum[:])
}

// short is as much of a hash as the manifest keeps.
func short(hash string) string { return hash[:16] }

// cached returns the brotli twin of plain: from the cache, where one of this
// quality or a better one lies, or made now and put there.
func cached(cache, hash string, quality int, plain []byte) ([]byte, error) {
	for q := BestQuality; q >= quality; q-- {
		if twin, err := os.ReadFile(cacheFile(cache, hash, q)); err == nil {
			return twin, nil
		}
	}
	var twin bytes.Buffer
	w := brotli.NewWriterOptions(&twin, brotli.WriterOptions{Quality: quality, LGWin: windowBits})
	if err := writeAll(w, plain); err != nil {
		return nil, err
	}
	return twin.Bytes(), install(cacheFile(cache, hash, quality), twin.Bytes())
}

func cacheFile(cache, hash string, quality int) string {
	return filepath.Join(cache, fmt.Sprintf("%s.q%d.br", hash, quality))
}

// gzipped needs no cache: it takes a second or two at most.
func gzipped(plain []byte) ([]byte, error) {
	var twin bytes.Buffer
	w, err := gzip.NewWriterLevel(&twin, gzip.BestCompression)
	if err != nil {
		return nil, err
	}
	if err := writeAll(w, plain); err != nil {
		return nil, err
	}
	return twin.Bytes(), nil
}

func writeAll(w io.WriteCloser, content []byte) error {
	if _, err := w.Write(content); err != nil {
		return err
	}
	return w.Close()
}

// freshen makes the twin's time no older than its file's, for the server takes
// only such twins.
func freshen(twin, file string) error {
	t, err := os.Stat(twin)
	if err != nil {
		return err
	}
	f, err := os.Stat(file)
	if err != nil || !t.ModTime().Before(f.ModTime()) {
		return err
	}
	now := time.Now()
	return os.Chtimes(twin, now, now)
}
