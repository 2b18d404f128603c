// 1: the book as first drawn. docs/schema.md describes every node and relationship.
CREATE CONSTRAINT book_is_one IF NOT EXISTS FOR (b:Book) REQUIRE b.one IS UNIQUE;
CREATE CONSTRAINT pen_is_one IF NOT EXISTS FOR (p:Pen) REQUIRE p.one IS UNIQUE;
CREATE CONSTRAINT person_number IF NOT EXISTS FOR (p:Person) REQUIRE p.number IS UNIQUE;
CREATE CONSTRAINT person_folded IF NOT EXISTS FOR (p:Person) REQUIRE p.folded IS UNIQUE;
CREATE CONSTRAINT entry_recorded_order IF NOT EXISTS FOR (e:Entry) REQUIRE e.recorded_order IS UNIQUE;
CREATE CONSTRAINT entry_id IF NOT EXISTS FOR (e:Entry) REQUIRE e.id IS UNIQUE;
CREATE CONSTRAINT unit_unit IF NOT EXISTS FOR (u:Unit) REQUIRE u.unit IS UNIQUE;
CREATE CONSTRAINT place_place IF NOT EXISTS FOR (p:Place) REQUIRE p.place IS UNIQUE;
CREATE CONSTRAINT cultivar_cultivar IF NOT EXISTS FOR (c:Cultivar) REQUIRE c.cultivar IS UNIQUE;
CREATE INDEX entry_kind IF NOT EXISTS FOR (e:Entry) ON (e.kind, e.recorded_order);
CREATE INDEX entry_recorded_at IF NOT EXISTS FOR (e:Entry) ON (e.recorded_at);
CREATE INDEX tag_tag IF NOT EXISTS FOR (t:Tag) ON (t.tag);
CREATE INDEX tag_folded IF NOT EXISTS FOR (t:Tag) ON (t.folded);
CREATE INDEX potting_container IF NOT EXISTS FOR (p:Potting) ON (p.container);
