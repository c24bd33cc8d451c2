-- Readings by hand were kept without an id; one is needed to take a single one off. Marks of notes stay as they are.
UPDATE "firing" SET "readings" = (
	SELECT coalesce(jsonb_agg(
		CASE WHEN "one"->'mark' IS NOT NULL OR "one"->'id' IS NOT NULL THEN "one"
		ELSE "one" || jsonb_build_object('id', gen_random_uuid()) END ORDER BY "place"), '[]'::jsonb)
	FROM jsonb_array_elements("readings") WITH ORDINALITY AS "kept"("one", "place")
);
