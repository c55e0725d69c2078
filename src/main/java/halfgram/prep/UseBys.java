package halfgram.prep;

import halfgram.formula.FormulaVersion;
import halfgram.formula.Output;
import halfgram.lot.Lot;
import halfgram.prep.netting.Draw;
import halfgram.prep.netting.Need;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Until when what is made may be used. Nothing outlives what it is made of: the end of its own
 * hold, or before that the use-by of anything in it that keeps only for safety's sake, through all
 * components, unless a step cooks it through and the formula says that dates count anew from there.
 *
 * <p>Source: date marking of combined foods (US model Food Code 3-501.17: the earliest-prepared
 * ingredient's date).
 */
final class UseBys {

  /**
   * A use-by.
   *
   * @param because code of the tub, or the make, whose date it is; empty when its own hold ends
   *     first
   */
  record Date(Instant useBy, Optional<String> because) {
    private Date earlier(Date other) {
      return other.useBy.isBefore(useBy) ? other : this;
    }
  }

  /** Nothing in it ends for safety's sake. */
  private static final Date NONE = new Date(Instant.MAX, Optional.empty());

  private record Key(String make, int output) {}

  private final Map<String, List<Draw>> tubs = new HashMap<>();
  private final Map<String, List<Key>> parts = new HashMap<>();
  private final Map<String, Make> byId = new HashMap<>();
  private final Map<String, Date> known = new HashMap<>();
  private final Map<String, Worked> worked = new HashMap<>();
  private final Map<String, Begun> begun = new HashMap<>();

  UseBys(Explosion explosion) {
    for (Draw draw : explosion.draws()) {
      tubs.computeIfAbsent(draw.need().user(), user -> new ArrayList<>()).add(draw);
    }
    for (Begun of : explosion.begun()) {
      begun.put(of.make().id(), of);
      worked.put(of.make().id(), explosion.workedOf(of.make()));
    }
    for (Make make : explosion.makes()) {
      byId.put(make.id(), make);
      worked.put(make.id(), explosion.workedOf(make));
      for (Need need : make.served()) {
        parts
            .computeIfAbsent(need.user(), user -> new ArrayList<>())
            .add(new Key(make.id(), need.output()));
      }
    }
  }

  /** The date of one output of a make. */
  Date of(Make make, int output) {
    return new Date(make.useBy(output), Optional.empty()).earlier(inside(make));
  }

  /** Until when what is in an output is safe, its own hold being one of safety or not. */
  Optional<Instant> safe(Make make, int output) {
    Date safe = safeDate(make, output);
    return safe.useBy().equals(Instant.MAX) ? Optional.empty() : Optional.of(safe.useBy());
  }

  private Date safeDate(Make make, int output) {
    boolean own = make.version().outputs().get(output).hold().reason().isSafety();
    return own
        ? new Date(make.useBy(output), Optional.of(make.id())).earlier(inside(make))
        : inside(make);
  }

  /** The earliest safety date of what goes into a make, through all components. */
  private Date inside(Make make) {
    Date before = known.get(make.id());
    if (before != null) {
      return before;
    }
    Date date = NONE;
    for (Worked.Part part : worked(make).parts) {
      if (!part.renewed()) {
        date = date.earlier(inside(make, part));
      }
    }
    known.put(make.id(), date);
    return date;
  }

  /** The earliest safety date of what goes in at one line. */
  private Date inside(Make make, Worked.Part part) {
    Date date = NONE;
    for (Draw draw : tubs.getOrDefault(make.id(), List.of())) {
      Lot lot = draw.lot();
      if (part.dated() && lot.component().formula().equals(part.version().formula())) {
        date = date.earlier(of(lot));
      }
    }
    for (Key key : parts.getOrDefault(make.id(), List.of())) {
      Make of = byId.get(key.make());
      if (of != null && of.version().isSame(part.version())) {
        date = date.earlier(safeDate(of, key.output()));
      }
    }
    return date;
  }

  /** The date of a tub; of one on the way only what is safe of it. */
  private Date of(Lot lot) {
    Begun from = begun.get(lot.code());
    if (from == null) {
      return new Date(lot.useBy(), Optional.of(lot.code()));
    }
    FormulaVersion version = from.make().version();
    Output output = version.outputs().get(version.outputIndex(lot.component().output()));
    Optional<Stored> stored = from.findStored(output.code());
    if (stored.isEmpty()) {
      return new Date(lot.useBy(), Optional.of(lot.code()));
    }
    String because = stored.get().useByOf().orElse(lot.code());
    return stored.get().safe().map(safe -> new Date(safe, Optional.of(because))).orElse(NONE);
  }

  private Worked worked(Make make) {
    return java.util.Objects.requireNonNull(worked.get(make.id()));
  }
}
