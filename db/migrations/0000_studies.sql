CREATE TABLE "analysis" (
	"id" uuid PRIMARY KEY DEFAULT gen_random_uuid() NOT NULL,
	"study_id" uuid NOT NULL,
	"specimen_id" uuid NOT NULL,
	"measured" text NOT NULL,
	"technique" text,
	"laboratory" text DEFAULT '' NOT NULL,
	"instrument" text DEFAULT '' NOT NULL,
	"date" text,
	"source" text DEFAULT '' NOT NULL,
	"doi" text DEFAULT '' NOT NULL,
	"spot" text DEFAULT '' NOT NULL,
	"note" text DEFAULT '' NOT NULL,
	"reported" jsonb NOT NULL,
	"import_id" uuid,
	"row" integer,
	"created_at" timestamp with time zone DEFAULT now() NOT NULL,
	"updated_at" timestamp with time zone DEFAULT now() NOT NULL
);
--> statement-breakpoint
CREATE TABLE "analyte" (
	"symbol" text PRIMARY KEY NOT NULL,
	"kind" text NOT NULL,
	"element" text,
	"name" text NOT NULL,
	"position" integer NOT NULL
);
--> statement-breakpoint
CREATE TABLE "column_choice" (
	"study_id" uuid NOT NULL,
	"fingerprint" text NOT NULL,
	"choices" jsonb NOT NULL,
	"updated_at" timestamp with time zone DEFAULT now() NOT NULL,
	CONSTRAINT "column_choice_study_id_fingerprint_pk" PRIMARY KEY("study_id","fingerprint")
);
--> statement-breakpoint
CREATE TABLE "import" (
	"id" uuid PRIMARY KEY DEFAULT gen_random_uuid() NOT NULL,
	"study_id" uuid NOT NULL,
	"status" text NOT NULL,
	"file_name" text DEFAULT '' NOT NULL,
	"sha256" text DEFAULT '' NOT NULL,
	"bytes" integer NOT NULL,
	"rows_read" integer DEFAULT 0 NOT NULL,
	"rows_total" integer,
	"analyses" integer DEFAULT 0 NOT NULL,
	"specimens" integer DEFAULT 0 NOT NULL,
	"groups" integer DEFAULT 0 NOT NULL,
	"outcome" jsonb,
	"heartbeat_at" timestamp with time zone DEFAULT now() NOT NULL,
	"created_at" timestamp with time zone DEFAULT now() NOT NULL,
	"finished_at" timestamp with time zone
);
--> statement-breakpoint
CREATE TABLE "placement" (
	"id" uuid PRIMARY KEY DEFAULT gen_random_uuid() NOT NULL,
	"study_id" uuid NOT NULL,
	"name" text NOT NULL,
	"note" text DEFAULT '' NOT NULL,
	"version" text NOT NULL,
	"sentences" jsonb NOT NULL,
	"settings" jsonb NOT NULL,
	"result" jsonb NOT NULL,
	"created_at" timestamp with time zone DEFAULT now() NOT NULL
);
--> statement-breakpoint
CREATE TABLE "specimen" (
	"id" uuid PRIMARY KEY DEFAULT gen_random_uuid() NOT NULL,
	"study_id" uuid NOT NULL,
	"label" text NOT NULL,
	"label_order" text NOT NULL,
	"catalogue_number" text DEFAULT '' NOT NULL,
	"catalogue_order" text DEFAULT '' NOT NULL,
	"kind" text NOT NULL,
	"ware_group_id" uuid,
	"notes" text DEFAULT '' NOT NULL,
	"import_id" uuid,
	"created_at" timestamp with time zone DEFAULT now() NOT NULL,
	"updated_at" timestamp with time zone DEFAULT now() NOT NULL,
	CONSTRAINT "specimen_label" UNIQUE("study_id","label")
);
--> statement-breakpoint
CREATE TABLE "study" (
	"id" uuid PRIMARY KEY DEFAULT gen_random_uuid() NOT NULL,
	"name" text NOT NULL,
	"place" text DEFAULT '' NOT NULL,
	"notes" text DEFAULT '' NOT NULL,
	"demo" boolean DEFAULT false NOT NULL,
	"created_at" timestamp with time zone DEFAULT now() NOT NULL,
	"updated_at" timestamp with time zone DEFAULT now() NOT NULL
);
--> statement-breakpoint
CREATE TABLE "technique" (
	"code" text PRIMARY KEY NOT NULL,
	"name" text NOT NULL,
	"relative_error" double precision,
	"note" text DEFAULT '' NOT NULL,
	"position" integer NOT NULL
);
--> statement-breakpoint
CREATE TABLE "ware_group" (
	"id" uuid PRIMARY KEY DEFAULT gen_random_uuid() NOT NULL,
	"study_id" uuid NOT NULL,
	"name" text NOT NULL,
	"period" text DEFAULT '' NOT NULL,
	"place" text DEFAULT '' NOT NULL,
	"source" text DEFAULT '' NOT NULL,
	"doi" text DEFAULT '' NOT NULL,
	"notes" text DEFAULT '' NOT NULL,
	"position" integer NOT NULL,
	"import_id" uuid,
	"created_at" timestamp with time zone DEFAULT now() NOT NULL,
	"updated_at" timestamp with time zone DEFAULT now() NOT NULL,
	CONSTRAINT "ware_group_name" UNIQUE("study_id","name")
);
--> statement-breakpoint
ALTER TABLE "analysis" ADD CONSTRAINT "analysis_study_id_study_id_fk" FOREIGN KEY ("study_id") REFERENCES "public"."study"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "analysis" ADD CONSTRAINT "analysis_specimen_id_specimen_id_fk" FOREIGN KEY ("specimen_id") REFERENCES "public"."specimen"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "analysis" ADD CONSTRAINT "analysis_technique_technique_code_fk" FOREIGN KEY ("technique") REFERENCES "public"."technique"("code") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "analysis" ADD CONSTRAINT "analysis_import_id_import_id_fk" FOREIGN KEY ("import_id") REFERENCES "public"."import"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "column_choice" ADD CONSTRAINT "column_choice_study_id_study_id_fk" FOREIGN KEY ("study_id") REFERENCES "public"."study"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "import" ADD CONSTRAINT "import_study_id_study_id_fk" FOREIGN KEY ("study_id") REFERENCES "public"."study"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "placement" ADD CONSTRAINT "placement_study_id_study_id_fk" FOREIGN KEY ("study_id") REFERENCES "public"."study"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "specimen" ADD CONSTRAINT "specimen_study_id_study_id_fk" FOREIGN KEY ("study_id") REFERENCES "public"."study"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "specimen" ADD CONSTRAINT "specimen_ware_group_id_ware_group_id_fk" FOREIGN KEY ("ware_group_id") REFERENCES "public"."ware_group"("id") ON DELETE set null ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "specimen" ADD CONSTRAINT "specimen_import_id_import_id_fk" FOREIGN KEY ("import_id") REFERENCES "public"."import"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "ware_group" ADD CONSTRAINT "ware_group_study_id_study_id_fk" FOREIGN KEY ("study_id") REFERENCES "public"."study"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "ware_group" ADD CONSTRAINT "ware_group_import_id_import_id_fk" FOREIGN KEY ("import_id") REFERENCES "public"."import"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "analysis_study" ON "analysis" USING btree ("study_id","measured");--> statement-breakpoint
CREATE INDEX "analysis_specimen" ON "analysis" USING btree ("specimen_id");--> statement-breakpoint
CREATE INDEX "analysis_import" ON "analysis" USING btree ("import_id");--> statement-breakpoint
CREATE INDEX "import_study" ON "import" USING btree ("study_id");--> statement-breakpoint
CREATE UNIQUE INDEX "import_one_running_a_study" ON "import" USING btree ("study_id") WHERE "import"."status" = 'running';--> statement-breakpoint
CREATE INDEX "placement_study" ON "placement" USING btree ("study_id");--> statement-breakpoint
CREATE INDEX "specimen_order" ON "specimen" USING btree ("study_id","label_order");--> statement-breakpoint
CREATE INDEX "specimen_ware_group" ON "specimen" USING btree ("ware_group_id");--> statement-breakpoint
CREATE INDEX "specimen_import" ON "specimen" USING btree ("import_id");--> statement-breakpoint
CREATE VIEW "public"."visible_analysis" AS (select "analysis"."id", "analysis"."study_id", "analysis"."specimen_id", "analysis"."measured", "analysis"."technique", "analysis"."laboratory", "analysis"."instrument", "analysis"."date", "analysis"."source", "analysis"."doi", "analysis"."spot", "analysis"."note", "analysis"."reported", "analysis"."import_id", "analysis"."row", "analysis"."created_at", "analysis"."updated_at" from "analysis" left join "import" on "import"."id" = "analysis"."import_id" where ("import"."id" is null or "import"."status" = 'done'));--> statement-breakpoint
CREATE VIEW "public"."visible_specimen" AS (select "specimen"."id", "specimen"."study_id", "specimen"."label", "specimen"."label_order", "specimen"."catalogue_number", "specimen"."catalogue_order", "specimen"."kind", "specimen"."ware_group_id", "specimen"."notes", "specimen"."import_id", "specimen"."created_at", "specimen"."updated_at" from "specimen" left join "import" on "import"."id" = "specimen"."import_id" where ("import"."id" is null or "import"."status" = 'done'));--> statement-breakpoint
CREATE VIEW "public"."visible_ware_group" AS (select "ware_group"."id", "ware_group"."study_id", "ware_group"."name", "ware_group"."period", "ware_group"."place", "ware_group"."source", "ware_group"."doi", "ware_group"."notes", "ware_group"."position", "ware_group"."import_id", "ware_group"."created_at", "ware_group"."updated_at" from "ware_group" left join "import" on "import"."id" = "ware_group"."import_id" where ("import"."id" is null or "import"."status" = 'done'));