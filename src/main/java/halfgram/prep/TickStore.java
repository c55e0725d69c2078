package halfgram.prep;

import static halfgram.db.schema.Tables.PLAN;
import static halfgram.db.schema.Tables.TICK;

import halfgram.db.Keys;
import halfgram.db.Tx;
import halfgram.db.schema.tables.records.TickRecord;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jooq.exception.IntegrityConstraintViolationException;

/** What cooks entered; append-only, unique by device and sequence. */
public final class TickStore {

  /**
   * Where a tick came from.
   *
   * @param sequence the device's own number of it: the same number is the same tick
   * @param time the device's clock
   * @param offsetMinutes of that clock against UTC
   */
  public record Origin(UUID device, long sequence, Instant time, int offsetMinutes) {}

  /**
   * Where a tick was entered later than it was done.
   *
   * @param came when it was entered
   * @param by who typed it, which need not be who did it
   */
  public record Later(Instant came, String by) {}

  /**
   * A tick as stored.
   *
   * @param later when and by whom it was entered, if that was not when it was done
   */
  public record Entered(Tick tick, UUID plan, Origin origin, long change, Optional<Later> later) {

    /** One that was entered as it was done. */
    public Entered(Tick tick, UUID plan, Origin origin, long change) {
      this(tick, plan, origin, change, Optional.empty());
    }
  }

  /** The tick that a device entered under a number. */
  public Optional<Entered> find(Tx tx, UUID kitchen, UUID device, long sequence) {
    return tx.sql()
        .selectFrom(TICK)
        .where(TICK.KITCHEN_ID.eq(kitchen))
        .and(TICK.DEVICE_ID.eq(device))
        .and(TICK.DEVICE_SEQUENCE.eq(sequence))
        .fetchOptional(TickStore::entered);
  }

  public boolean has(Tx tx, UUID kitchen, UUID id) {
    return tx.sql().fetchExists(TICK, TICK.KITCHEN_ID.eq(kitchen), TICK.ID.eq(id));
  }

  /** A device's number or an id that another tick of the kitchen has. */
  public static final class AlreadyThere extends RuntimeException {
    private static final long serialVersionUID = 1;

    private AlreadyThere(Throwable cause) {
      super(cause);
    }
  }

  /**
   * Adds a tick.
   *
   * @throws AlreadyThere the transaction can only be undone then
   */
  public void add(Tx tx, UUID kitchen, Entered entered) {
    try {
      insert(tx, kitchen, entered);
    } catch (IntegrityConstraintViolationException e) {
      throw new AlreadyThere(e);
    }
  }

  private static void insert(Tx tx, UUID kitchen, Entered entered) {
    Tick tick = entered.tick();
    tx.sql()
        .insertInto(TICK)
        .set(TICK.KITCHEN_ID, kitchen)
        .set(TICK.ID, tick.id())
        .set(TICK.PLAN_ID, entered.plan())
        .set(TICK.TASK, tick.task())
        .set(TICK.KIND, tick.kind().name())
        .set(TICK.LINE, tick.line().orElse(null))
        .set(TICK.AMOUNT, tick.amount().map(Amount::number).orElse(null))
        .set(TICK.DIMENSION, tick.amount().map(a -> a.dimension().name()).orElse(null))
        .set(TICK.MINUTES, tick.minutes().orElse(null))
        .set(TICK.NOTE, tick.note().orElse(null))
        .set(TICK.COOK, tick.cook())
        .set(TICK.DEVICE_ID, entered.origin().device())
        .set(TICK.DEVICE_SEQUENCE, entered.origin().sequence())
        .set(TICK.DEVICE_TIME, entered.origin().time())
        .set(TICK.DEVICE_OFFSET_MINUTES, entered.origin().offsetMinutes())
        .set(TICK.SERVER_TIME, entered.later().map(Later::came).orElse(tick.at()))
        .set(TICK.SAID_TIME, entered.later().map(later -> tick.at()).orElse(null))
        .set(TICK.SAID_BY, entered.later().map(Later::by).orElse(null))
        .set(TICK.UNDOES, tick.undoes().orElse(null))
        .set(TICK.CHANGE_NUMBER, entered.change())
        .execute();
  }

  /** Ticks of one task, in the order they were entered. */
  public List<Tick> listOfTask(Tx tx, UUID kitchen, String task) {
    return tx.sql()
        .selectFrom(TICK)
        .where(TICK.KITCHEN_ID.eq(kitchen))
        .and(TICK.TASK.eq(task))
        .orderBy(TICK.CHANGE_NUMBER)
        .fetch(row -> entered(row).tick());
  }

  /** Ticks of several tasks, each in order. */
  public Map<String, List<Tick>> listOfTasks(Tx tx, UUID kitchen, Collection<String> tasks) {
    Map<String, List<Tick>> byTask = new LinkedHashMap<>();
    for (Tick tick : listAsEntered(tx, kitchen, tasks)) {
      byTask.computeIfAbsent(tick.task(), task -> new ArrayList<>()).add(tick);
    }
    return byTask;
  }

  /** Ticks of several tasks together, in the order they were entered. */
  public List<Tick> listAsEntered(Tx tx, UUID kitchen, Collection<String> tasks) {
    return tx.sql()
        .selectFrom(TICK)
        .where(Keys.in(TICK.KITCHEN_ID, kitchen, TICK.TASK, tasks))
        .orderBy(TICK.CHANGE_NUMBER)
        .fetch(row -> entered(row).tick());
  }

  /** Tasks of the plans of a day before a number about which something was told. */
  public List<String> listTold(Tx tx, UUID kitchen, LocalDate day, int before) {
    return tx.sql()
        .selectDistinct(TICK.TASK)
        .from(TICK)
        .join(PLAN)
        .on(PLAN.KITCHEN_ID.eq(TICK.KITCHEN_ID).and(PLAN.ID.eq(TICK.PLAN_ID)))
        .where(TICK.KITCHEN_ID.eq(kitchen))
        .and(PLAN.BUSINESS_DAY.eq(day))
        .and(PLAN.NUMBER.lt(before))
        .and(TICK.KIND.in(Tick.Kind.CALLED.name(), Tick.Kind.PROBLEM.name()))
        .orderBy(TICK.TASK)
        .fetch(TICK.TASK);
  }

  /** Ticks that came since a moment, whenever it was done, in the order they were entered. */
  public List<Entered> listSince(Tx tx, UUID kitchen, Instant since) {
    return tx.sql()
        .selectFrom(TICK)
        .where(TICK.KITCHEN_ID.eq(kitchen))
        .and(TICK.SERVER_TIME.ge(since))
        .orderBy(TICK.CHANGE_NUMBER)
        .fetch(TickStore::entered);
  }

  /** The last ticks before a change number, newest first. */
  public List<Entered> listBefore(Tx tx, UUID kitchen, long number, int most) {
    return tx.sql()
        .selectFrom(TICK)
        .where(TICK.KITCHEN_ID.eq(kitchen))
        .and(TICK.CHANGE_NUMBER.lt(number))
        .orderBy(TICK.KITCHEN_ID.desc(), TICK.CHANGE_NUMBER.desc())
        .limit(most)
        .fetch(TickStore::entered);
  }

  private static Entered entered(TickRecord row) {
    Tick tick =
        new Tick(
            row.getId(),
            row.getTask(),
            Tick.Kind.valueOf(row.getKind()),
            Optional.ofNullable(row.getLine()),
            Optional.ofNullable(row.getAmount())
                .map(amount -> new Amount(amount, Dimension.valueOf(row.getDimension()))),
            Optional.ofNullable(row.getMinutes()),
            Optional.ofNullable(row.getNote()),
            row.getCook(),
            Optional.ofNullable(row.getSaidTime()).orElse(row.getServerTime()),
            Optional.ofNullable(row.getUndoes()));
    return new Entered(
        tick,
        row.getPlanId(),
        new Origin(
            row.getDeviceId(),
            row.getDeviceSequence(),
            row.getDeviceTime(),
            row.getDeviceOffsetMinutes()),
        row.getChangeNumber(),
        Optional.ofNullable(row.getSaidBy()).map(by -> new Later(row.getServerTime(), by)));
  }
}
