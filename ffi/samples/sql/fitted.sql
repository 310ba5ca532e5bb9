-- Bores and pistons as they were measured, and which pair may be marked as fitted: only one whose clearance is proven to conform.
-- Every limit and reading here is invented.
--
--   sqlite3 -cmd '.load gaugepoint_sqlite' shop.db <fitted.sql

CREATE TABLE pair (
  cylinder INTEGER PRIMARY KEY,
  -- at 20 C; NULL where it was not measured
  bore_mm REAL,
  -- what the micrometer read, and how warm piston and micrometer were
  piston_reading_mm REAL,
  shop_c REAL,
  -- limits of the clearance: a number, or 'none'
  lower_mm NOT NULL DEFAULT 0.060,
  upper_mm NOT NULL DEFAULT 0.150,
  -- the micrometer reads 2.3 um too much; steel grows by 11.5e-6 and this piston by 19.4e-6 per kelvin
  piston_mm REAL AS (gaugepoint_size_at_20_mm(piston_reading_mm, 0.0023, shop_c, 11.5e-6, shop_c, 19.4e-6)) STORED,
  clearance_mm REAL AS (gaugepoint_bench_clearance_mm(bore_mm, piston_mm)) STORED,
  -- its standard uncertainty is 4 um
  verdict TEXT AS (gaugepoint_decide(clearance_mm, 0.004, lower_mm, upper_mm, 'proven')) STORED,
  fitted INTEGER NOT NULL DEFAULT 0 CHECK (fitted IN (0, 1)),
  -- IS, not =: of a pair that was not measured the verdict is NULL, and a CHECK lets NULL pass
  CONSTRAINT fitted_conforms CHECK (fitted = 0 OR verdict IS 'conforms')
);

INSERT INTO pair (cylinder, bore_mm, piston_reading_mm, shop_c) VALUES
  (1, 96.0170, 95.9571, 27),
  (2, 96.0130, 95.9571, 27),
  (3, NULL, 95.9573, 27),
  (4, 96.1200, 95.9571, 27);

.print a bore in inches, a decimal comma:
INSERT INTO pair (cylinder, bore_mm, piston_reading_mm, shop_c) VALUES (5, 3.78, 95.9571, 27);
INSERT INTO pair (cylinder, bore_mm, piston_reading_mm, shop_c) VALUES (5, '96,017', 95.9571, 27);

.print fitted, one by one:
UPDATE pair SET fitted = 1 WHERE cylinder = 1;
UPDATE pair SET fitted = 1 WHERE cylinder = 2;
UPDATE pair SET fitted = 1 WHERE cylinder = 3;
UPDATE pair SET fitted = 1 WHERE cylinder = 4;

.print a fitted pair is measured again:
UPDATE pair SET bore_mm = 96.0130 WHERE cylinder = 1;

.print what is in the table:
SELECT cylinder, round(piston_mm, 4), round(clearance_mm, 4), verdict, fitted FROM pair;
