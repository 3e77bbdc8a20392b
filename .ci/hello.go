// Command hello tells whether programs of another kind of CPU run here.
package main

func main() { println("yes") }
