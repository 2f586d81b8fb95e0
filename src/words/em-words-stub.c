/* Placeholder until the room has its first source. */
typedef int em_words_stub;
