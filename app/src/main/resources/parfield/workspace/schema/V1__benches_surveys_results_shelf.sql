-- One text for both databases; only the type of bytes differs.
-- Ids are UUIDs as text, times are microseconds since 1970-01-01T00:00Z, lengths are metres,
-- readings are in umol m-2 s-1. Names are stored a second time as they are searched (folded).

CREATE TABLE contents (
  digest TEXT NOT NULL PRIMARY KEY,
  size BIGINT NOT NULL,
  bytes ${bytes} NOT NULL
);

CREATE TABLE benches (
  id TEXT NOT NULL PRIMARY KEY,
  name TEXT NOT NULL,
  folded TEXT NOT NULL,
  sample BOOLEAN NOT NULL,
  put_away BOOLEAN NOT NULL,
  revision BIGINT NOT NULL,
  created BIGINT NOT NULL,
  changed BIGINT NOT NULL
);

-- state: DONE; UNDONE (can be brought back); PASSED (undone, then something else was written).
CREATE TABLE setups (
  bench TEXT NOT NULL REFERENCES benches (id),
  revision BIGINT NOT NULL,
  text TEXT NOT NULL,
  cause TEXT NOT NULL,
  state TEXT NOT NULL,
  who TEXT NOT NULL,
  written BIGINT NOT NULL,
  PRIMARY KEY (bench, revision)
);

CREATE TABLE setup_files (
  bench TEXT NOT NULL,
  revision BIGINT NOT NULL,
  name TEXT NOT NULL,
  digest TEXT NOT NULL REFERENCES contents (digest),
  PRIMARY KEY (bench, revision, name),
  FOREIGN KEY (bench, revision) REFERENCES setups (bench, revision)
);

CREATE TABLE surveys (
  id TEXT NOT NULL PRIMARY KEY,
  bench TEXT NOT NULL REFERENCES benches (id),
  name TEXT NOT NULL,
  folded TEXT NOT NULL,
  sequence BIGINT NOT NULL,
  readings INTEGER NOT NULL,
  created BIGINT NOT NULL,
  changed BIGINT NOT NULL,
  UNIQUE (bench, name)
);
CREATE INDEX surveys_by_change ON surveys (changed, id);

-- What undo takes back at once. request: id of an undo or redo, so that it is done once.
CREATE TABLE steps (
  survey TEXT NOT NULL REFERENCES surveys (id),
  sequence BIGINT NOT NULL,
  cause TEXT NOT NULL,
  state TEXT NOT NULL,
  request TEXT UNIQUE,
  who TEXT NOT NULL,
  stored BIGINT NOT NULL,
  PRIMARY KEY (survey, sequence)
);

CREATE TABLE readings (
  id TEXT NOT NULL PRIMARY KEY,
  survey TEXT NOT NULL REFERENCES surveys (id),
  revision BIGINT NOT NULL,
  sequence BIGINT NOT NULL
);
CREATE INDEX readings_by_change ON readings (survey, sequence);

CREATE TABLE reading_revisions (
  reading TEXT NOT NULL REFERENCES readings (id),
  revision BIGINT NOT NULL,
  survey TEXT NOT NULL,
  sequence BIGINT NOT NULL,
  write_id TEXT UNIQUE,
  x DOUBLE PRECISION NOT NULL,
  y DOUBLE PRECISION NOT NULL,
  depth DOUBLE PRECISION NOT NULL,
  place_order INTEGER NOT NULL,
  typed TEXT NOT NULL,
  value DOUBLE PRECISION,
  origin TEXT NOT NULL,
  kind TEXT NOT NULL,
  kept BOOLEAN NOT NULL,
  cause TEXT NOT NULL,
  who TEXT NOT NULL,
  entered BIGINT NOT NULL,
  PRIMARY KEY (reading, revision),
  FOREIGN KEY (survey, sequence) REFERENCES steps (survey, sequence)
);
CREATE INDEX reading_revisions_by_step ON reading_revisions (survey, sequence);

CREATE TABLE results (
  id TEXT NOT NULL PRIMARY KEY,
  bench TEXT NOT NULL REFERENCES benches (id),
  kind TEXT NOT NULL,
  inputs_digest TEXT NOT NULL,
  setup_revision BIGINT NOT NULL,
  version TEXT NOT NULL,
  document TEXT NOT NULL REFERENCES contents (digest),
  who TEXT NOT NULL,
  stored BIGINT NOT NULL,
  FOREIGN KEY (bench, setup_revision) REFERENCES setups (bench, revision)
);
CREATE INDEX results_by_inputs ON results (bench, kind, inputs_digest, stored);

CREATE TABLE result_surveys (
  result TEXT NOT NULL REFERENCES results (id),
  survey TEXT NOT NULL REFERENCES surveys (id),
  sequence BIGINT NOT NULL,
  PRIMARY KEY (result, survey)
);

CREATE TABLE shelf (
  kind TEXT NOT NULL,
  name TEXT NOT NULL,
  folded TEXT NOT NULL,
  revision BIGINT NOT NULL,
  removed BOOLEAN NOT NULL,
  PRIMARY KEY (kind, name)
);

CREATE TABLE shelf_revisions (
  kind TEXT NOT NULL,
  name TEXT NOT NULL,
  revision BIGINT NOT NULL,
  text TEXT NOT NULL,
  who TEXT NOT NULL,
  written BIGINT NOT NULL,
  PRIMARY KEY (kind, name, revision),
  FOREIGN KEY (kind, name) REFERENCES shelf (kind, name)
);

CREATE TABLE shelf_files (
  kind TEXT NOT NULL,
  name TEXT NOT NULL,
  revision BIGINT NOT NULL,
  file TEXT NOT NULL,
  digest TEXT NOT NULL REFERENCES contents (digest),
  PRIMARY KEY (kind, name, revision, file),
  FOREIGN KEY (kind, name, revision) REFERENCES shelf_revisions (kind, name, revision)
);
