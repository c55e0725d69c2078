package halfgram.testkit;

import halfgram.testkit.Client.Answer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The fields of a page's form as a browser would send them, to change some and send it. */
public final class FilledForm {
  private static final Pattern PART =
      Pattern.compile("<(input|select|/select|option|textarea)\\b([^>]*)>([^<]*)", Pattern.DOTALL);
  private static final Pattern ATTRIBUTE = Pattern.compile("([a-z-]+)(?:=\"([^\"]*)\")?");

  private static final Pattern POSTED = Pattern.compile("(?s)<form\\b([^>]*)>(.*?)</form>");

  private final List<Map.Entry<String, String>> fields = new ArrayList<>();

  private FilledForm() {}

  /** The form whose action contains this. */
  public static FilledForm of(Answer page, String action) {
    Matcher form =
        Pattern.compile(
                "(?s)<form[^>]*action=\"[^\"]*" + Pattern.quote(action) + "\"[^>]*>(.*?)</form>")
            .matcher(page.body());
    if (!form.find()) {
      throw new AssertionError("no form to " + action);
    }
    return filled(form.group(1));
  }

  /** A form that is posted, with where to. */
  public record Posted(String action, FilledForm form) {}

  /** The first form of a page that sends this in some field: "DONE". */
  public static FilledForm sending(Answer page, String value) {
    return posted(page).stream()
        .map(Posted::form)
        .filter(form -> Arrays.asList(form.fields()).contains(value))
        .findFirst()
        .orElseThrow();
  }

  /** Every form of a page that is posted. */
  public static List<Posted> posted(Answer page) {
    return POSTED
        .matcher(page.body())
        .results()
        .filter(form -> attribute(form.group(1), "method").equals("post"))
        .map(form -> new Posted(attribute(form.group(1), "action"), filled(form.group(2))))
        .toList();
  }

  private static FilledForm filled(String inside) {
    FilledForm filled = new FilledForm();
    Matcher part = PART.matcher(inside);
    String select = "";
    String first = "";
    String chosen = "";
    while (part.find()) {
      String tag = part.group(1);
      String name = attribute(part.group(2), "name");
      String value = attribute(part.group(2), "value");
      if (tag.equals("input") && isSent(part.group(2)) && !name.equals("_csrf")) {
        filled.fields.add(Map.entry(name, value));
      } else if (tag.equals("textarea")) {
        filled.fields.add(Map.entry(name, plain(part.group(3))));
      } else if (tag.equals("select")) {
        select = name;
        first = "";
        chosen = "";
      } else if (tag.equals("option") && part.group(2).contains(" selected")) {
        chosen = value;
      } else if (tag.equals("/select")) {
        filled.fields.add(Map.entry(select, chosen.isEmpty() ? first : chosen));
      }
    }
    return filled;
  }

  private static boolean isSent(String attributes) {
    String type = attribute(attributes, "type");
    boolean ticked = type.equals("checkbox") || type.equals("radio");
    return !ticked || attributes.contains(" checked");
  }

  private static String attribute(String attributes, String name) {
    Matcher matcher = ATTRIBUTE.matcher(attributes);
    while (matcher.find()) {
      if (matcher.group(1).equals(name)) {
        return matcher.group(2) == null ? "" : plain(matcher.group(2));
      }
    }
    return "";
  }

  private static String plain(String escaped) {
    return escaped
        .replace("&quot;", "\"")
        .replace("&#39;", "'")
        .replace("&lt;", "<")
        .replace("&gt;", ">")
        .replace("&amp;", "&");
  }

  /** This form with a field that holds something else, or is sent too. */
  public FilledForm with(String name, String value) {
    FilledForm other = new FilledForm();
    boolean there = false;
    for (Map.Entry<String, String> field : fields) {
      boolean same = field.getKey().equals(name);
      there |= same;
      other.fields.add(same ? Map.entry(name, value) : field);
    }
    if (!there) {
      other.fields.add(Map.entry(name, value));
    }
    return other;
  }

  /** The names of its fields, each once. */
  public List<String> names() {
    return fields.stream().map(Map.Entry::getKey).distinct().toList();
  }

  /** The first value of a field; it must be there. */
  public String value(String name) {
    return fields.stream()
        .filter(field -> field.getKey().equals(name))
        .map(Map.Entry::getValue)
        .findFirst()
        .orElseThrow(() -> new AssertionError("no field " + name));
  }

  /** Names and values by turns. */
  public String[] fields() {
    return fields.stream()
        .flatMap(field -> List.of(field.getKey(), field.getValue()).stream())
        .toArray(String[]::new);
  }
}
