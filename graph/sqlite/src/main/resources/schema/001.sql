-- 1: the book as first drawn. docs/schema.md describes every table.

CREATE TABLE book (
  one       INTEGER PRIMARY KEY CHECK (one = 1),
  id        TEXT NOT NULL CHECK (length(id) = 36),
  zone      TEXT NOT NULL,
  created   TEXT NOT NULL,
  last_unit INTEGER NOT NULL DEFAULT 0
) STRICT;

CREATE TRIGGER book_is_one BEFORE INSERT ON book
WHEN EXISTS (SELECT 1 FROM book)
BEGIN
  SELECT RAISE(ABORT, 'a file holds one book');
END;

CREATE TRIGGER book_keeps_its_identity BEFORE UPDATE OF one, id, zone, created ON book
WHEN EXISTS (SELECT 1 FROM entry)
BEGIN
  SELECT RAISE(ABORT, 'a book with entries keeps its identity');
END;

CREATE TRIGGER book_stays BEFORE DELETE ON book
BEGIN
  SELECT RAISE(ABORT, 'the book cannot be deleted');
END;

CREATE TABLE person (
  number      INTEGER PRIMARY KEY CHECK (number >= 1),
  name        TEXT,
  folded      TEXT UNIQUE,
  role        TEXT NOT NULL,
  particulars TEXT
) STRICT;

CREATE TRIGGER person_is_new BEFORE INSERT ON person
WHEN EXISTS (SELECT 1 FROM person WHERE number = NEW.number)
BEGIN
  SELECT RAISE(ABORT, 'a number stands for one person');
END;

CREATE TRIGGER person_keeps_the_number BEFORE UPDATE OF number ON person
BEGIN
  SELECT RAISE(ABORT, 'a number stands for one person');
END;

CREATE TRIGGER person_stays BEFORE DELETE ON person
BEGIN
  SELECT RAISE(ABORT, 'persons are erased, their numbers stay');
END;

CREATE TABLE entry (
  recorded_order INTEGER PRIMARY KEY,
  id             BLOB NOT NULL CHECK (length(id) = 16),
  kind           TEXT NOT NULL,
  day            TEXT NOT NULL CHECK (length(day) IN (4, 7, 10)),
  by_person      INTEGER REFERENCES person (number),
  recorded_at    TEXT NOT NULL,
  fields         TEXT NOT NULL,
  digest         BLOB NOT NULL CHECK (length(digest) = 32),
  day_first      TEXT GENERATED ALWAYS AS (day || substr('-01-01', length(day) - 3)) VIRTUAL,
  day_last       TEXT GENERATED ALWAYS AS (CASE length(day)
                   WHEN 10 THEN day
                   WHEN 7 THEN date(day || '-01', '+1 month', '-1 day')
                   ELSE day || '-12-31' END) VIRTUAL
) STRICT;

CREATE UNIQUE INDEX entry_id ON entry (id);

CREATE INDEX entry_listing ON entry (recorded_order)
WHERE kind IN ('cultivar-listed', 'place-listed');

CREATE TRIGGER entry_follows_the_last BEFORE INSERT ON entry
WHEN NEW.recorded_order IS NOT (SELECT coalesce(max(recorded_order), 0) + 1 FROM entry)
BEGIN
  SELECT RAISE(ABORT, 'an entry follows the last one without a gap');
END;

CREATE TRIGGER entry_is_written_once BEFORE INSERT ON entry
WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.id)
BEGIN
  SELECT RAISE(ABORT, 'an entry is written once');
END;

CREATE TRIGGER entry_is_never_changed BEFORE UPDATE ON entry
BEGIN
  SELECT RAISE(ABORT, 'entries are never changed');
END;

CREATE TRIGGER entry_is_never_deleted BEFORE DELETE ON entry
BEGIN
  SELECT RAISE(ABORT, 'entries are never deleted');
END;

-- What follows is worked out from the entries and can be dropped and rebuilt.

CREATE TABLE amendment (
  target    INTEGER NOT NULL,
  amendment INTEGER NOT NULL,
  PRIMARY KEY (target, amendment)
) STRICT, WITHOUT ROWID;

CREATE TABLE unit (
  unit           INTEGER PRIMARY KEY,
  nature         TEXT NOT NULL,
  position       INTEGER NOT NULL,
  day            TEXT NOT NULL,
  recorded_order INTEGER NOT NULL,
  day_first      TEXT GENERATED ALWAYS AS (day || substr('-01-01', length(day) - 3)) VIRTUAL
) STRICT;

CREATE TABLE tag (
  unit           INTEGER NOT NULL,
  position       INTEGER NOT NULL,
  tag            TEXT NOT NULL,
  folded         TEXT NOT NULL,
  day            TEXT NOT NULL,
  recorded_order INTEGER NOT NULL,
  day_first      TEXT GENERATED ALWAYS AS (day || substr('-01-01', length(day) - 3)) VIRTUAL,
  PRIMARY KEY (unit, position)
) STRICT, WITHOUT ROWID;

CREATE INDEX tag_tag ON tag (tag);

CREATE INDEX tag_folded ON tag (folded);

CREATE TABLE involvement (
  unit           INTEGER NOT NULL,
  recorded_order INTEGER NOT NULL,
  PRIMARY KEY (unit, recorded_order)
) STRICT, WITHOUT ROWID;

CREATE TABLE link (
  child          INTEGER NOT NULL,
  position       INTEGER NOT NULL,
  act            TEXT NOT NULL,
  mother         INTEGER NOT NULL,
  count          INTEGER,
  day            TEXT NOT NULL,
  recorded_order INTEGER NOT NULL,
  day_first      TEXT GENERATED ALWAYS AS (day || substr('-01-01', length(day) - 3)) VIRTUAL,
  PRIMARY KEY (child, position)
) STRICT, WITHOUT ROWID;

CREATE INDEX link_mother ON link (mother);

CREATE TABLE naming (
  unit           INTEGER NOT NULL,
  position       INTEGER NOT NULL,
  cultivar       TEXT NOT NULL,
  is_true        INTEGER NOT NULL,
  day            TEXT NOT NULL,
  recorded_order INTEGER NOT NULL,
  day_first      TEXT GENERATED ALWAYS AS (day || substr('-01-01', length(day) - 3)) VIRTUAL,
  PRIMARY KEY (unit, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE cohort (
  unit           INTEGER PRIMARY KEY,
  method         TEXT NOT NULL,
  by_person      INTEGER,
  count          INTEGER,
  root           INTEGER NOT NULL,
  day            TEXT NOT NULL,
  recorded_order INTEGER NOT NULL,
  day_first      TEXT GENERATED ALWAYS AS (day || substr('-01-01', length(day) - 3)) VIRTUAL
) STRICT;

CREATE TABLE outcome (
  unit           INTEGER NOT NULL,
  position       INTEGER NOT NULL,
  fate           TEXT NOT NULL,
  count          INTEGER NOT NULL,
  cause          TEXT,
  day            TEXT NOT NULL,
  recorded_order INTEGER NOT NULL,
  day_first      TEXT GENERATED ALWAYS AS (day || substr('-01-01', length(day) - 3)) VIRTUAL,
  PRIMARY KEY (unit, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE standing (
  unit           INTEGER NOT NULL,
  position       INTEGER NOT NULL,
  pending        INTEGER,
  growing        INTEGER NOT NULL,
  day            TEXT NOT NULL,
  recorded_order INTEGER NOT NULL,
  day_first      TEXT GENERATED ALWAYS AS (day || substr('-01-01', length(day) - 3)) VIRTUAL,
  PRIMARY KEY (unit, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE potting (
  unit           INTEGER NOT NULL,
  position       INTEGER NOT NULL,
  container      TEXT,
  day            TEXT NOT NULL,
  recorded_order INTEGER NOT NULL,
  day_first      TEXT GENERATED ALWAYS AS (day || substr('-01-01', length(day) - 3)) VIRTUAL,
  PRIMARY KEY (unit, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE stay (
  unit           INTEGER NOT NULL,
  position       INTEGER NOT NULL,
  place          TEXT NOT NULL,
  day            TEXT NOT NULL,
  recorded_order INTEGER NOT NULL,
  day_first      TEXT GENERATED ALWAYS AS (day || substr('-01-01', length(day) - 3)) VIRTUAL,
  PRIMARY KEY (unit, position)
) STRICT, WITHOUT ROWID;

CREATE INDEX stay_place ON stay (place);

CREATE TABLE leaving (
  unit           INTEGER NOT NULL,
  position       INTEGER NOT NULL,
  reason         TEXT NOT NULL,
  count          INTEGER NOT NULL,
  person         INTEGER,
  day            TEXT NOT NULL,
  recorded_order INTEGER NOT NULL,
  day_first      TEXT GENERATED ALWAYS AS (day || substr('-01-01', length(day) - 3)) VIRTUAL,
  PRIMARY KEY (unit, position)
) STRICT, WITHOUT ROWID;
