CREATE TABLE "picture" (
	"id" uuid PRIMARY KEY DEFAULT gen_random_uuid() NOT NULL,
	"study_id" uuid NOT NULL,
	"tile_id" uuid,
	"firing_id" uuid,
	"type" text NOT NULL,
	"width" integer NOT NULL,
	"height" integer NOT NULL,
	"bytes" "bytea" NOT NULL,
	"caption" text DEFAULT '' NOT NULL,
	"taken" text,
	"grey" jsonb,
	"created_at" timestamp with time zone DEFAULT now() NOT NULL,
	CONSTRAINT "picture_of_one" CHECK (num_nonnulls("picture"."tile_id", "picture"."firing_id") = 1)
);
--> statement-breakpoint
ALTER TABLE "tile_picture" DISABLE ROW LEVEL SECURITY;--> statement-breakpoint
DROP VIEW "public"."visible_analysis";--> statement-breakpoint
DROP TABLE "tile_picture" CASCADE;--> statement-breakpoint
ALTER TABLE "zone" ALTER COLUMN "row" DROP NOT NULL;--> statement-breakpoint
ALTER TABLE "zone" ALTER COLUMN "column" DROP NOT NULL;--> statement-breakpoint
ALTER TABLE "analysis" ADD COLUMN "zone_id" uuid;--> statement-breakpoint
ALTER TABLE "zone" ADD COLUMN "picture_id" uuid;--> statement-breakpoint
ALTER TABLE "zone" ADD COLUMN "outline" jsonb;--> statement-breakpoint
ALTER TABLE "zone" ADD COLUMN "measured_colour" jsonb;--> statement-breakpoint
ALTER TABLE "picture" ADD CONSTRAINT "picture_study_id_study_id_fk" FOREIGN KEY ("study_id") REFERENCES "public"."study"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "picture" ADD CONSTRAINT "picture_tile_id_tile_specimen_id_fk" FOREIGN KEY ("tile_id") REFERENCES "public"."tile"("specimen_id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "picture" ADD CONSTRAINT "picture_firing_id_firing_id_fk" FOREIGN KEY ("firing_id") REFERENCES "public"."firing"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "picture_study" ON "picture" USING btree ("study_id");--> statement-breakpoint
CREATE INDEX "picture_tile" ON "picture" USING btree ("tile_id");--> statement-breakpoint
CREATE INDEX "picture_firing" ON "picture" USING btree ("firing_id");--> statement-breakpoint
ALTER TABLE "analysis" ADD CONSTRAINT "analysis_zone_id_zone_id_fk" FOREIGN KEY ("zone_id") REFERENCES "public"."zone"("id") ON DELETE set null ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "zone" ADD CONSTRAINT "zone_picture_id_picture_id_fk" FOREIGN KEY ("picture_id") REFERENCES "public"."picture"("id") ON DELETE set null ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "analysis_zone" ON "analysis" USING btree ("zone_id");--> statement-breakpoint
CREATE VIEW "public"."visible_analysis" AS (select "analysis"."id", "analysis"."study_id", "analysis"."specimen_id", "analysis"."zone_id", "analysis"."measured", "analysis"."technique", "analysis"."laboratory", "analysis"."instrument", "analysis"."date", "analysis"."source", "analysis"."doi", "analysis"."spot", "analysis"."note", "analysis"."reported", "analysis"."import_id", "analysis"."row", "analysis"."created_at", "analysis"."updated_at" from "analysis" left join "import" on "import"."id" = "analysis"."import_id" where ("import"."id" is null or "import"."status" = 'done'));