package main

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
	"os"
	"syscall"
	"time"

	"wideberth/internal/site"
)

// serve serves the page until the context ends.
func serve(ctx context.Context, args []string, s streams) (int, error) {
	flags := newFlags("serve", "[-addr HOST:PORT] [-dir FOLDER]", s)
	addr := flags.String("addr", "localhost:8080", "address to serve on; another free port is taken when this one is not")
	dir := flags.String("dir", "public", "folder of the page")
	if err := flags.Parse(args); err != nil {
		return 0, err
	}
	if flags.NArg() > 0 {
		return 0, fmt.Errorf("serve takes no %q: flags only", flags.Arg(0))
	}
	root, err := os.OpenRoot(*dir)
	if err != nil {
		return 0, fmt.Errorf("the folder to serve: %w", err)
	}
	defer root.Close()
	listener, err := listen(*addr)
	if err != nil {
		return 0, err
	}
	host, _, err := net.SplitHostPort(*addr)
	if err != nil {
		return 0, err
	}
	if host == "" {
		host = "localhost"
	}
	port := listener.Addr().(*net.TCPAddr).Port
	fmt.Fprintf(s.out, "Wide Berth is at http://%s/ (Ctrl-C stops it)\n", net.JoinHostPort(host, fmt.Sprint(port)))
	return exitClear, serveUntil(ctx, listener, site.Handler(root.FS()))
}

// listen takes the address, or any free port of its host when the port is taken.
func listen(addr string) (net.Listener, error) {
	listener, err := net.Listen("tcp", addr)
	if !errors.Is(err, syscall.EADDRINUSE) {
		return listener, err
	}
	host, _, err := net.SplitHostPort(addr)
	if err != nil {
		return nil, err
	}
	return net.Listen("tcp", net.JoinHostPort(host, "0"))
}

// grace is what a download under way has to finish after an interrupt.
const grace = time.Second

// serveUntil answers requests until the context ends, then lets those under way
// finish, if they are quick.
func serveUntil(ctx context.Context, listener net.Listener, handler http.Handler) error {
	server := &http.Server{Handler: handler, ReadHeaderTimeout: 10 * time.Second}
	failed := make(chan error, 1)
	go func() { failed <- server.Serve(listener) }()
	select {
	case err := <-failed:
		return err
	case <-ctx.Done():
	}
	ending, cancel := context.WithTimeout(context.WithoutCancel(ctx), grace)
	defer cancel()
	err := server.Shutdown(ending)
	if errors.Is(err, context.DeadlineExceeded) {
		return server.Close()
	}
	return err
}
