package halfgram.people;

import static halfgram.db.schema.Tables.ACCOUNT;
import static halfgram.db.schema.Tables.INVITATION;
import static halfgram.db.schema.Tables.MEMBER;

import halfgram.db.Tx;
import halfgram.db.schema.tables.records.AccountRecord;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jooq.Record;

/** Accounts, their passwords' hashes, invitations, and what they are in which kitchen. */
public final class AccountStore {

  public Account add(Tx tx, String name, String shown, Instant at) {
    UUID id = UUID.randomUUID();
    tx.sql()
        .insertInto(ACCOUNT)
        .set(ACCOUNT.ID, id)
        .set(ACCOUNT.NAME, name)
        .set(ACCOUNT.SHOWN, shown)
        .set(ACCOUNT.CREATED_AT, at)
        .execute();
    return new Account(id, name, shown, false);
  }

  /** By what they sign in with. */
  public Optional<Account> find(Tx tx, String name) {
    return tx.sql()
        .selectFrom(ACCOUNT)
        .where(ACCOUNT.NAME.eq(name))
        .fetchOptional(AccountStore::account);
  }

  public Optional<Account> find(Tx tx, UUID id) {
    return tx.sql()
        .selectFrom(ACCOUNT)
        .where(ACCOUNT.ID.eq(id))
        .fetchOptional(AccountStore::account);
  }

  /** Whether there is anybody at all. */
  public boolean isEmpty(Tx tx) {
    return !tx.sql().fetchExists(ACCOUNT);
  }

  /** The hash of a password; empty for who has not chosen one, and for nobody. */
  public Optional<String> findHash(Tx tx, String name) {
    return tx.sql()
        .select(ACCOUNT.PASSWORD_HASH)
        .from(ACCOUNT)
        .where(ACCOUNT.NAME.eq(name))
        .fetchOptional(ACCOUNT.PASSWORD_HASH);
  }

  public void setHash(Tx tx, UUID account, String hash) {
    tx.sql()
        .update(ACCOUNT)
        .set(ACCOUNT.PASSWORD_HASH, hash)
        .where(ACCOUNT.ID.eq(account))
        .execute();
  }

  /** Adds an invitation; those before it no longer count. */
  public void invite(Tx tx, UUID account, String codeHash, Instant now, Instant expires) {
    tx.sql()
        .update(INVITATION)
        .set(INVITATION.USED_AT, now)
        .where(INVITATION.ACCOUNT_ID.eq(account))
        .and(INVITATION.USED_AT.isNull())
        .execute();
    tx.sql()
        .insertInto(INVITATION)
        .set(INVITATION.ID, UUID.randomUUID())
        .set(INVITATION.ACCOUNT_ID, account)
        .set(INVITATION.CODE_HASH, codeHash)
        .set(INVITATION.EXPIRES_AT, expires)
        .execute();
  }

  /** Whose invitation it is, if it still counts. */
  public Optional<Account> findInvited(Tx tx, String codeHash, Instant now) {
    return tx.sql()
        .select(ACCOUNT.fields())
        .from(INVITATION)
        .join(ACCOUNT)
        .on(ACCOUNT.ID.eq(INVITATION.ACCOUNT_ID))
        .where(INVITATION.CODE_HASH.eq(codeHash))
        .and(INVITATION.USED_AT.isNull())
        .and(INVITATION.EXPIRES_AT.gt(now))
        .fetchOptional(row -> account(row.into(ACCOUNT)));
  }

  /** Uses an invitation up; false when somebody was quicker. */
  public boolean use(Tx tx, String codeHash, Instant now) {
    return tx.sql()
            .update(INVITATION)
            .set(INVITATION.USED_AT, now)
            .where(INVITATION.CODE_HASH.eq(codeHash))
            .and(INVITATION.USED_AT.isNull())
            .execute()
        == 1;
  }

  /** Everybody of a kitchen, by name. */
  public List<Member> list(Tx tx, UUID kitchen) {
    return tx.sql()
        .select(ACCOUNT.fields())
        .select(MEMBER.ROLE, MEMBER.PERSON, MEMBER.SINCE)
        .from(MEMBER)
        .join(ACCOUNT)
        .on(ACCOUNT.ID.eq(MEMBER.ACCOUNT_ID))
        .where(MEMBER.KITCHEN_ID.eq(kitchen))
        .orderBy(ACCOUNT.SHOWN, ACCOUNT.NAME)
        .fetch(AccountStore::member);
  }

  /** What an account is in a kitchen. */
  public Optional<Member> find(Tx tx, UUID kitchen, UUID account) {
    return tx.sql()
        .select(ACCOUNT.fields())
        .select(MEMBER.ROLE, MEMBER.PERSON, MEMBER.SINCE)
        .from(MEMBER)
        .join(ACCOUNT)
        .on(ACCOUNT.ID.eq(MEMBER.ACCOUNT_ID))
        .where(MEMBER.KITCHEN_ID.eq(kitchen))
        .and(MEMBER.ACCOUNT_ID.eq(account))
        .fetchOptional(AccountStore::member);
  }

  /** The kitchens that an account belongs to. */
  public List<UUID> listKitchens(Tx tx, UUID account) {
    return tx.sql()
        .select(MEMBER.KITCHEN_ID)
        .from(MEMBER)
        .where(MEMBER.ACCOUNT_ID.eq(account))
        .fetch(MEMBER.KITCHEN_ID);
  }

  /** Makes somebody what they are to be in a kitchen, new there or not. */
  public void put(Tx tx, UUID kitchen, Member member) {
    tx.sql()
        .insertInto(MEMBER)
        .set(MEMBER.KITCHEN_ID, kitchen)
        .set(MEMBER.ID, UUID.randomUUID())
        .set(MEMBER.ACCOUNT_ID, member.account().id())
        .set(MEMBER.ROLE, member.role().code())
        .set(MEMBER.PERSON, member.person().orElse(null))
        .set(MEMBER.SINCE, member.since())
        .onConflict(MEMBER.KITCHEN_ID, MEMBER.ACCOUNT_ID)
        .doUpdate()
        .set(MEMBER.ROLE, member.role().code())
        .set(MEMBER.PERSON, member.person().orElse(null))
        .execute();
  }

  public void remove(Tx tx, UUID kitchen, UUID account) {
    tx.sql()
        .deleteFrom(MEMBER)
        .where(MEMBER.KITCHEN_ID.eq(kitchen))
        .and(MEMBER.ACCOUNT_ID.eq(account))
        .execute();
  }

  private static Account account(AccountRecord row) {
    return new Account(row.getId(), row.getName(), row.getShown(), row.getPasswordHash() != null);
  }

  private static Member member(Record row) {
    return new Member(
        account(row.into(ACCOUNT)),
        Role.find(row.get(MEMBER.ROLE)).orElse(Role.VIEWER),
        Optional.ofNullable(row.get(MEMBER.PERSON)),
        row.get(MEMBER.SINCE));
  }
}
