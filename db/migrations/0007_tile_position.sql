ALTER TABLE "tile" ADD COLUMN "position" integer;--> statement-breakpoint
-- Tiles made from a plan held the place number it drew by lot as if a person had said it. Typed numbers stay.
UPDATE "tile" SET "position" = "tile"."place"::integer, "place" = '' FROM "specimen"
WHERE "specimen"."id" = "tile"."specimen_id" AND "tile"."place" ~ '^[0-9]{1,4}$' AND EXISTS (
	SELECT 1 FROM "plan", jsonb_array_elements("plan"."plan"->'tiles') AS "planned"
	WHERE "plan"."study_id" = "tile"."study_id" AND "planned"->>'place' = "tile"."place"
	AND right("specimen"."label", length("planned"->>'label')) = "planned"->>'label'
);
