package halfgram.measure;

/** How much a value deserves to be believed; shown beside it, so no default looks like a rule. */
public enum Standing {
  DEFINITION,
  PUBLISHED,
  COMPUTED,
  COMMON_PRACTICE,
  UNVERIFIED,
  MEASURED_HERE,
  ENTERED;

  /** The word for it in reference files and books: lower case with hyphens. */
  public String word() {
    return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }

  public static java.util.Optional<Standing> find(String word) {
    return java.util.Arrays.stream(values()).filter(s -> s.word().equals(word)).findFirst();
  }
}
