package halfgram.people;

import static halfgram.db.schema.Tables.ACCOUNT;
import static halfgram.db.schema.Tables.ACTING;
import static halfgram.db.schema.Tables.MEMBER;
import static halfgram.db.schema.Tables.SESSION;
import static halfgram.db.schema.Tables.WRONG_TRY;

import halfgram.db.Tx;
import halfgram.db.schema.tables.records.SessionRecord;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jooq.Condition;

/** Who is signed in where, who works on which device, and what was tried in vain. */
public final class SessionStore {

  /**
   * A session that counts.
   *
   * @param seen when it was last noted to be in use
   * @param caller what its person is in the kitchen that was asked for; empty for nobody there
   */
  public record Found(
      UUID id, Account account, Instant since, Instant seen, Optional<Caller> caller) {}

  public Session add(Tx tx, Session session, String tokenHash) {
    tx.sql()
        .insertInto(SESSION)
        .set(SESSION.ID, session.id())
        .set(SESSION.ACCOUNT_ID, session.account())
        .set(SESSION.TOKEN_HASH, tokenHash)
        .set(SESSION.AGENT, session.agent())
        .set(SESSION.ADDRESS, session.address())
        .set(SESSION.CREATED_AT, session.since())
        .set(SESSION.SEEN_AT, session.seen())
        .execute();
    return session;
  }

  /** A session that has not ended, and what it is in a kitchen. */
  public Optional<Found> find(Tx tx, String tokenHash, UUID kitchen) {
    return tx.sql()
        .select(SESSION.ID, SESSION.CREATED_AT, SESSION.SEEN_AT)
        .select(ACCOUNT.ID, ACCOUNT.NAME, ACCOUNT.SHOWN)
        .select(MEMBER.ROLE, MEMBER.PERSON, ACTING.PERSON)
        .from(SESSION)
        .join(ACCOUNT)
        .on(ACCOUNT.ID.eq(SESSION.ACCOUNT_ID))
        .leftJoin(MEMBER)
        .on(MEMBER.ACCOUNT_ID.eq(ACCOUNT.ID).and(MEMBER.KITCHEN_ID.eq(kitchen)))
        .leftJoin(ACTING)
        .on(ACTING.DEVICE_ID.eq(SESSION.ID).and(ACTING.KITCHEN_ID.eq(kitchen)))
        .where(SESSION.TOKEN_HASH.eq(tokenHash))
        .and(SESSION.ENDED_AT.isNull())
        .fetchOptional(
            row -> {
              Account account =
                  new Account(
                      row.get(ACCOUNT.ID), row.get(ACCOUNT.NAME), row.get(ACCOUNT.SHOWN), true);
              Optional<Caller> caller =
                  Optional.ofNullable(row.get(MEMBER.ROLE))
                      .flatMap(Role::find)
                      .map(
                          role ->
                              new Caller(
                                  Caller.Kind.SESSION,
                                  row.get(SESSION.ID),
                                  account.shown(),
                                  role,
                                  Optional.ofNullable(row.get(MEMBER.PERSON)),
                                  Optional.ofNullable(row.get(ACTING.PERSON)),
                                  Optional.empty()));
              return new Found(
                  row.get(SESSION.ID),
                  account,
                  row.get(SESSION.CREATED_AT),
                  row.get(SESSION.SEEN_AT),
                  caller);
            });
  }

  public void see(Tx tx, UUID session, Instant at) {
    tx.sql().update(SESSION).set(SESSION.SEEN_AT, at).where(SESSION.ID.eq(session)).execute();
  }

  /** The sessions of an account that have not ended, the last used first. */
  public List<Session> list(Tx tx, UUID account) {
    return tx.sql()
        .selectFrom(SESSION)
        .where(SESSION.ACCOUNT_ID.eq(account))
        .and(SESSION.ENDED_AT.isNull())
        .orderBy(SESSION.SEEN_AT.desc(), SESSION.CREATED_AT.desc())
        .fetch(SessionStore::session);
  }

  /** Ends one of an account's sessions; false when it has none of that id. */
  public boolean end(Tx tx, UUID account, UUID session, Instant at) {
    return end(tx, SESSION.ACCOUNT_ID.eq(account).and(SESSION.ID.eq(session)), at) > 0;
  }

  public boolean end(Tx tx, String tokenHash, Instant at) {
    return end(tx, SESSION.TOKEN_HASH.eq(tokenHash), at) > 0;
  }

  /** Ends all of an account's sessions but one, if that is given. */
  public int endAll(Tx tx, UUID account, Optional<UUID> but, Instant at) {
    Condition others = SESSION.ACCOUNT_ID.eq(account);
    return end(tx, but.map(one -> others.and(SESSION.ID.ne(one))).orElse(others), at);
  }

  private static int end(Tx tx, Condition which, Instant at) {
    return tx.sql()
        .update(SESSION)
        .set(SESSION.ENDED_AT, at)
        .where(which)
        .and(SESSION.ENDED_AT.isNull())
        .execute();
  }

  /** Notes who works on a device in a kitchen. */
  public void act(Tx tx, UUID kitchen, UUID device, String person, Instant at) {
    tx.sql()
        .insertInto(ACTING)
        .set(ACTING.KITCHEN_ID, kitchen)
        .set(ACTING.ID, UUID.randomUUID())
        .set(ACTING.DEVICE_ID, device)
        .set(ACTING.PERSON, person)
        .set(ACTING.AT, at)
        .onConflict(ACTING.KITCHEN_ID, ACTING.DEVICE_ID)
        .doUpdate()
        .set(ACTING.PERSON, person)
        .set(ACTING.AT, at)
        .execute();
  }

  /** Notes that something was tried in vain, and forgets what is long past. */
  public void addWrong(Tx tx, String subjectHash, Instant at, Instant old) {
    tx.sql().deleteFrom(WRONG_TRY).where(WRONG_TRY.AT.lt(old)).execute();
    tx.sql()
        .insertInto(WRONG_TRY)
        .set(WRONG_TRY.ID, UUID.randomUUID())
        .set(WRONG_TRY.SUBJECT_HASH, subjectHash)
        .set(WRONG_TRY.AT, at)
        .execute();
  }

  /** When it was tried in vain since a moment, the last first. */
  public List<Instant> listWrong(Tx tx, String subjectHash, Instant since) {
    return tx.sql()
        .select(WRONG_TRY.AT)
        .from(WRONG_TRY)
        .where(WRONG_TRY.SUBJECT_HASH.eq(subjectHash))
        .and(WRONG_TRY.AT.ge(since))
        .orderBy(WRONG_TRY.AT.desc())
        .fetch(WRONG_TRY.AT);
  }

  /** It was right at last: what was wrong before no longer counts. */
  public void forgetWrong(Tx tx, String subjectHash) {
    tx.sql().deleteFrom(WRONG_TRY).where(WRONG_TRY.SUBJECT_HASH.eq(subjectHash)).execute();
  }

  private static Session session(SessionRecord row) {
    return new Session(
        row.getId(),
        row.getAccountId(),
        row.getCreatedAt(),
        row.getSeenAt(),
        row.getAgent(),
        row.getAddress());
  }
}
