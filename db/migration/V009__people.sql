-- Who may see and do what. Accounts, sessions, invitations and pairings are of the installation, since
-- somebody may belong to several kitchens and a tablet that is not paired yet to none; the rest is a kitchen's.
alter table kitchen add column demo boolean default false not null;

create table account (
  id uuid not null,
  name varchar(80) not null,
  shown varchar(80) not null,
  password_hash varchar(300),
  created_at timestamp with time zone not null,
  constraint pk_account primary key (id),
  constraint uq_account_name unique (name)
);

create table member (
  kitchen_id uuid not null,
  id uuid not null,
  account_id uuid not null,
  role varchar(16) not null,
  person varchar(80),
  since timestamp with time zone not null,
  constraint pk_member primary key (kitchen_id, id),
  constraint uq_member_account unique (kitchen_id, account_id),
  constraint fk_member_kitchen foreign key (kitchen_id) references kitchen (id),
  constraint fk_member_account foreign key (account_id) references account (id)
);
create index ix_member_account on member (account_id);

-- A one-time way to choose a password: for somebody new, and for who forgot theirs. Only the hash is kept.
create table invitation (
  id uuid not null,
  account_id uuid not null,
  code_hash varchar(64) not null,
  expires_at timestamp with time zone not null,
  used_at timestamp with time zone,
  constraint pk_invitation primary key (id),
  constraint uq_invitation_code unique (code_hash),
  constraint fk_invitation_account foreign key (account_id) references account (id)
);

create table session (
  id uuid not null,
  account_id uuid not null,
  token_hash varchar(64) not null,
  agent varchar(200) not null,
  address varchar(64) not null,
  created_at timestamp with time zone not null,
  seen_at timestamp with time zone not null,
  ended_at timestamp with time zone,
  constraint pk_session primary key (id),
  constraint uq_session_token unique (token_hash),
  constraint fk_session_account foreign key (account_id) references account (id)
);
create index ix_session_account on session (account_id);

-- Passwords and PINs that were wrong, by what was tried from where: only a hash of both.
create table wrong_try (
  id uuid not null,
  subject_hash varchar(64) not null,
  at timestamp with time zone not null,
  constraint pk_wrong_try primary key (id)
);
create index ix_wrong_try on wrong_try (subject_hash, at);

create table tablet (
  kitchen_id uuid not null,
  id uuid not null,
  name varchar(80) not null,
  stations text not null,
  token_hash varchar(64) not null,
  paired_at timestamp with time zone not null,
  paired_by varchar(80) not null,
  seen_at timestamp with time zone,
  revoked_at timestamp with time zone,
  constraint pk_tablet primary key (kitchen_id, id),
  constraint uq_tablet_token unique (token_hash),
  constraint fk_tablet_kitchen foreign key (kitchen_id) references kitchen (id)
);

create table pairing (
  id uuid not null,
  kitchen_id uuid not null,
  code_hash varchar(64) not null,
  name varchar(80) not null,
  stations text not null,
  made_by varchar(80) not null,
  expires_at timestamp with time zone not null,
  used_at timestamp with time zone,
  constraint pk_pairing primary key (id),
  constraint uq_pairing_code unique (code_hash),
  constraint fk_pairing_kitchen foreign key (kitchen_id) references kitchen (id)
);

-- Who works on a device, a tablet or somebody's session, in a kitchen.
create table acting (
  kitchen_id uuid not null,
  id uuid not null,
  device_id uuid not null,
  person varchar(80) not null,
  at timestamp with time zone not null,
  constraint pk_acting primary key (kitchen_id, id),
  constraint uq_acting_device unique (kitchen_id, device_id),
  constraint fk_acting_kitchen foreign key (kitchen_id) references kitchen (id)
);

create table pin (
  kitchen_id uuid not null,
  id uuid not null,
  person varchar(80) not null,
  pin_hash varchar(300) not null,
  set_at timestamp with time zone not null,
  constraint pk_pin primary key (kitchen_id, id),
  constraint uq_pin_person unique (kitchen_id, person),
  constraint fk_pin_kitchen foreign key (kitchen_id) references kitchen (id)
);

-- What a tablet sent after it was revoked: kept as it was sent until the office settles it.
create table kept_entry (
  kitchen_id uuid not null,
  id uuid not null,
  tablet_id uuid not null,
  at timestamp with time zone not null,
  path varchar(200) not null,
  body text not null,
  cook varchar(80) not null,
  settled_at timestamp with time zone,
  settled_by varchar(80),
  entered boolean default false not null,
  constraint pk_kept_entry primary key (kitchen_id, id),
  constraint fk_kept_entry_tablet foreign key (kitchen_id, tablet_id) references tablet (kitchen_id, id)
);

-- From where a change came: by a page, a call, a tablet or a command, by whose account, from which address.
alter table change_log add column via varchar(16);
alter table change_log add column account varchar(80);
alter table change_log add column address varchar(64);
