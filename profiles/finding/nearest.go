package finding

// Nearest returns the word among those given that the user most likely meant:
// at most two slips away (a letter more, less, other, or two swapped) and
// fewer than half the word's letters. The first of equals wins.
func Nearest(word string, among []string) (string, bool) {
	best, at := 3, ""
	for _, w := range among {
		if d := slips([]rune(word), []rune(w)); d < best && 2*d < max(len(word), 3) {
			best, at = d, w
		}
	}
	return at, at != ""
}

// slips counts the slips between two words: optimal string alignment. Words
// whose lengths differ by more than two are 3 apart, whatever they say.
func slips(a, b []rune) int {
	if len(a)-len(b) > 2 || len(b)-len(a) > 2 {
		return 3
	}
	before, last, now := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		now[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			now[j] = min(last[j]+1, now[j-1]+1, last[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				now[j] = min(now[j], before[j-2]+1)
			}
		}
		before, last, now = last, now, before
	}
	return last[len(b)]
}
