CREATE TABLE "batch" (
	"id" uuid PRIMARY KEY DEFAULT gen_random_uuid() NOT NULL,
	"study_id" uuid NOT NULL,
	"name" text NOT NULL,
	"unit" text NOT NULL,
	"lines" jsonb NOT NULL,
	"fire" jsonb NOT NULL,
	"target" jsonb,
	"series" text DEFAULT '' NOT NULL,
	"place" text DEFAULT '' NOT NULL,
	"note" text DEFAULT '' NOT NULL,
	"created_at" timestamp with time zone DEFAULT now() NOT NULL,
	"updated_at" timestamp with time zone DEFAULT now() NOT NULL,
	CONSTRAINT "batch_name" UNIQUE("study_id","name")
);
--> statement-breakpoint
CREATE TABLE "material" (
	"id" uuid PRIMARY KEY DEFAULT gen_random_uuid() NOT NULL,
	"study_id" uuid NOT NULL,
	"name" text NOT NULL,
	"making" jsonb NOT NULL,
	"source" text DEFAULT '' NOT NULL,
	"handling" text DEFAULT '' NOT NULL,
	"hazards" jsonb DEFAULT '[]'::jsonb NOT NULL,
	"price_per_kg" double precision,
	"on_hand" double precision,
	"created_at" timestamp with time zone DEFAULT now() NOT NULL,
	"updated_at" timestamp with time zone DEFAULT now() NOT NULL,
	CONSTRAINT "material_name" UNIQUE("study_id","name")
);
--> statement-breakpoint
CREATE TABLE "roast" (
	"id" uuid PRIMARY KEY DEFAULT gen_random_uuid() NOT NULL,
	"study_id" uuid NOT NULL,
	"name" text NOT NULL,
	"date" text,
	"charge" jsonb NOT NULL,
	"mass_out" double precision NOT NULL,
	"weighing" double precision NOT NULL,
	"celsius" double precision NOT NULL,
	"hours" double precision NOT NULL,
	"looks" jsonb,
	"sulfur" jsonb,
	"note" text DEFAULT '' NOT NULL,
	"created_at" timestamp with time zone DEFAULT now() NOT NULL,
	"updated_at" timestamp with time zone DEFAULT now() NOT NULL,
	CONSTRAINT "roast_name" UNIQUE("study_id","name")
);
--> statement-breakpoint
CREATE TABLE "specimen_batch" (
	"specimen_id" uuid PRIMARY KEY NOT NULL,
	"batch_id" uuid NOT NULL
);
--> statement-breakpoint
ALTER TABLE "batch" ADD CONSTRAINT "batch_study_id_study_id_fk" FOREIGN KEY ("study_id") REFERENCES "public"."study"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "material" ADD CONSTRAINT "material_study_id_study_id_fk" FOREIGN KEY ("study_id") REFERENCES "public"."study"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "roast" ADD CONSTRAINT "roast_study_id_study_id_fk" FOREIGN KEY ("study_id") REFERENCES "public"."study"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "specimen_batch" ADD CONSTRAINT "specimen_batch_specimen_id_specimen_id_fk" FOREIGN KEY ("specimen_id") REFERENCES "public"."specimen"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "specimen_batch" ADD CONSTRAINT "specimen_batch_batch_id_batch_id_fk" FOREIGN KEY ("batch_id") REFERENCES "public"."batch"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "batch_study" ON "batch" USING btree ("study_id");--> statement-breakpoint
CREATE INDEX "material_study" ON "material" USING btree ("study_id");--> statement-breakpoint
CREATE INDEX "roast_study" ON "roast" USING btree ("study_id");--> statement-breakpoint
CREATE INDEX "specimen_batch_batch" ON "specimen_batch" USING btree ("batch_id");