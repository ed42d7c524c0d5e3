// Command cli is Wide Berth without a browser: it checks a plan, prints a
// swing, and builds, measures and serves the page.
//
//	check PLAN.json                                      print the report
//	swing -player NAME -club NAME -tee NAME PLAN.json    print one swing, 240 frames a second
//	picture -o FILE.png [-view VIEW] PLAN.json           draw the answer, as PNG or SVG
//	room PLAN.json                                       print the rest of the room: floor, image, projector, quantities
//	sure                                                 print the model beside every measured swing
//	serve                                                serve the page on this machine
//	build                                                build what the page loads
//	site -o FOLDER                                       build it, and leave a folder for any static host
//	size                                                 what a visitor transfers
//
// PLAN.json is a file, or - for standard input. check exits with 0 when
// everything is clear, 1 when something is tight, 2 when something strikes and
// 3 when the plan or the command line is wrong. (go run itself turns every code
// but 0 into 1; build the command to see them.)
package main

import (
	"context"
	"os"
	"os/signal"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	code := run(ctx, os.Args[1:], os.Stdin, os.Stdout, os.Stderr)
	stop()
	os.Exit(code)
}
