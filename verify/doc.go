// Package verify reads programs back, cuts the part's stock with the real
// inserts and judges what is left, feature by feature.
//
// It believes nothing the planner says: only the bytes of the program, the
// part file and the shop are its facts; comments, block numbers and headers
// are not. What it cannot judge it says; a guess is never a pass.
//
// The stock stays in the part's frame (Z0 at the finished front face, Z
// falling toward the back). A set-up that looks at the back face is the same
// cut seen from the other end: its paths and its tools are mirrored in Z.
package verify
