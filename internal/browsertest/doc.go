// Package browsertest drives the built page in headless Chromium as a person
// would: it finds controls by their role and accessible name, types and presses
// keys, reads the sentences, looks at the pixels. Its tests carry the build tag
// "browser" (make browser runs them), so that go test ./... needs no browser.
//
// The rules: a test waits for a signal of the page, never for a time; an error
// or a warning on the console, or an uncaught exception, fails the test it
// happened in; every test starts with an empty browser profile. Facts that start
// from one plan share a page (onePage).
package browsertest
