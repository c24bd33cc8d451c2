CREATE TABLE "firing" (
	"id" uuid PRIMARY KEY DEFAULT gen_random_uuid() NOT NULL,
	"study_id" uuid NOT NULL,
	"name" text NOT NULL,
	"date" text,
	"place" text DEFAULT '' NOT NULL,
	"fuel" text DEFAULT '' NOT NULL,
	"weather" text DEFAULT '' NOT NULL,
	"note" text DEFAULT '' NOT NULL,
	"thresholds" jsonb NOT NULL,
	"stages" jsonb NOT NULL,
	"readings" jsonb NOT NULL,
	"digest" jsonb,
	"log_problems" jsonb,
	"log_name" text DEFAULT '' NOT NULL,
	"log_bytes" integer,
	"log_sha256" text DEFAULT '' NOT NULL,
	"created_at" timestamp with time zone DEFAULT now() NOT NULL,
	"updated_at" timestamp with time zone DEFAULT now() NOT NULL,
	CONSTRAINT "firing_name" UNIQUE("study_id","name")
);
--> statement-breakpoint
CREATE TABLE "plan" (
	"id" uuid PRIMARY KEY DEFAULT gen_random_uuid() NOT NULL,
	"study_id" uuid NOT NULL,
	"name" text NOT NULL,
	"note" text DEFAULT '' NOT NULL,
	"reason" text DEFAULT '' NOT NULL,
	"plan" jsonb NOT NULL,
	"created_at" timestamp with time zone DEFAULT now() NOT NULL
);
--> statement-breakpoint
CREATE TABLE "tile" (
	"specimen_id" uuid PRIMARY KEY NOT NULL,
	"study_id" uuid NOT NULL,
	"firing_id" uuid,
	"place" text DEFAULT '' NOT NULL,
	"rows" integer NOT NULL,
	"columns" integer NOT NULL,
	"settings" jsonb NOT NULL,
	"created_at" timestamp with time zone DEFAULT now() NOT NULL,
	"updated_at" timestamp with time zone DEFAULT now() NOT NULL
);
--> statement-breakpoint
CREATE TABLE "tile_picture" (
	"tile_id" uuid PRIMARY KEY NOT NULL,
	"type" text NOT NULL,
	"width" integer NOT NULL,
	"height" integer NOT NULL,
	"bytes" "bytea" NOT NULL,
	"created_at" timestamp with time zone DEFAULT now() NOT NULL
);
--> statement-breakpoint
CREATE TABLE "zone" (
	"id" uuid PRIMARY KEY DEFAULT gen_random_uuid() NOT NULL,
	"tile_id" uuid NOT NULL,
	"label" text NOT NULL,
	"row" integer NOT NULL,
	"column" integer NOT NULL,
	"coats" double precision,
	"micrometres" double precision,
	"settings" jsonb NOT NULL,
	"grade" text,
	"glassy_share" double precision,
	"colour" text DEFAULT '' NOT NULL,
	"defects" jsonb NOT NULL,
	"note" text DEFAULT '' NOT NULL,
	CONSTRAINT "zone_label" UNIQUE("tile_id","label")
);
--> statement-breakpoint
ALTER TABLE "firing" ADD CONSTRAINT "firing_study_id_study_id_fk" FOREIGN KEY ("study_id") REFERENCES "public"."study"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "plan" ADD CONSTRAINT "plan_study_id_study_id_fk" FOREIGN KEY ("study_id") REFERENCES "public"."study"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "tile" ADD CONSTRAINT "tile_specimen_id_specimen_id_fk" FOREIGN KEY ("specimen_id") REFERENCES "public"."specimen"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "tile" ADD CONSTRAINT "tile_study_id_study_id_fk" FOREIGN KEY ("study_id") REFERENCES "public"."study"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "tile" ADD CONSTRAINT "tile_firing_id_firing_id_fk" FOREIGN KEY ("firing_id") REFERENCES "public"."firing"("id") ON DELETE set null ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "tile_picture" ADD CONSTRAINT "tile_picture_tile_id_tile_specimen_id_fk" FOREIGN KEY ("tile_id") REFERENCES "public"."tile"("specimen_id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "zone" ADD CONSTRAINT "zone_tile_id_tile_specimen_id_fk" FOREIGN KEY ("tile_id") REFERENCES "public"."tile"("specimen_id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "plan_study" ON "plan" USING btree ("study_id");--> statement-breakpoint
CREATE INDEX "tile_study" ON "tile" USING btree ("study_id");--> statement-breakpoint
CREATE INDEX "tile_firing" ON "tile" USING btree ("firing_id");