package halfgram.people;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What somebody is in a kitchen; a tablet on the wall is one of its own kind. */
public enum Role {
  OWNER,
  CHEF,
  CATERER,
  COOK,
  VIEWER,
  TABLET;

  /** What a person can be. */
  public static List<Role> ofPeople() {
    return Arrays.stream(values()).filter(role -> role != TABLET).toList();
  }

  /** As forms, calls and commands write it: "chef". */
  public String code() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** What a person can be, by its code. */
  public static Optional<Role> find(String code) {
    return ofPeople().stream().filter(role -> role.code().equals(code)).findFirst();
  }
}
