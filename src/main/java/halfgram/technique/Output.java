package halfgram.technique;

/** A number that a technique can give. */
public record Output(String name, String unit) {}
