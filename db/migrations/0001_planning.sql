CREATE TABLE `absences` (
	`id` text PRIMARY KEY NOT NULL,
	`staff_id` text,
	`from_on` text NOT NULL,
	`to_on` text NOT NULL,
	`from_min` integer,
	`to_min` integer,
	`reason` text NOT NULL,
	`withdrawn_at` text,
	FOREIGN KEY (`staff_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "absences_from" CHECK("absences"."from_on" IS NULL OR "absences"."from_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
	CONSTRAINT "absences_to" CHECK("absences"."to_on" IS NULL OR "absences"."to_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
	CONSTRAINT "absences_order" CHECK("absences"."from_on" <= "absences"."to_on"),
	CONSTRAINT "absences_part_whole" CHECK(("absences"."from_min" IS NULL) = ("absences"."to_min" IS NULL)),
	CONSTRAINT "absences_part_span" CHECK("absences"."from_min" IS NULL OR ("absences"."from_min" >= 0 AND "absences"."from_min" < "absences"."to_min" AND "absences"."to_min" <= 1440))
) STRICT;
--> statement-breakpoint
CREATE INDEX `absences_by_day` ON `absences` (`to_on`);--> statement-breakpoint
CREATE TABLE `job_skills` (
	`id` text PRIMARY KEY NOT NULL,
	`job_id` text NOT NULL,
	`skill` text NOT NULL,
	FOREIGN KEY (`job_id`) REFERENCES `jobs`(`id`) ON UPDATE no action ON DELETE restrict
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `job_skills_once` ON `job_skills` (`job_id`,`skill`);--> statement-breakpoint
CREATE TABLE `photo_requests` (
	`id` text PRIMARY KEY NOT NULL,
	`job_id` text NOT NULL,
	`view` text NOT NULL,
	`asked_whom` text,
	`asked_by_id` text NOT NULL,
	`asked_at` text NOT NULL,
	`received_at` text,
	FOREIGN KEY (`job_id`) REFERENCES `jobs`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`asked_by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "photo_requests_view" CHECK("photo_requests"."view" IN ('boiler-front', 'vent-outside', 'gas-meter'))
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `photo_requests_once` ON `photo_requests` (`job_id`,`view`);--> statement-breakpoint
CREATE TABLE `staff_skills` (
	`id` text PRIMARY KEY NOT NULL,
	`staff_id` text NOT NULL,
	`skill` text NOT NULL,
	FOREIGN KEY (`staff_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `staff_skills_once` ON `staff_skills` (`staff_id`,`skill`);--> statement-breakpoint
CREATE TABLE `wasted_trips` (
	`id` text PRIMARY KEY NOT NULL,
	`visit_id` text NOT NULL,
	`code` text NOT NULL,
	`is_chargeable` integer NOT NULL,
	`note` text,
	`recorded_by_id` text NOT NULL,
	`recorded_at` text NOT NULL,
	FOREIGN KEY (`visit_id`) REFERENCES `visits`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`recorded_by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "wasted_trips_code" CHECK("wasted_trips"."code" IN ('no-gas', 'no-power', 'vent-unfinished', 'system-empty', 'no-access', 'wrong-equipment', 'controls-not-wired', 'no-heat-load', 'permit-missing', 'licence-or-training', 'instrument-not-in-date', 'other'))
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `wasted_trips_once` ON `wasted_trips` (`visit_id`);--> statement-breakpoint
CREATE TABLE `working_hours` (
	`id` text PRIMARY KEY NOT NULL,
	`staff_id` text NOT NULL,
	`weekday` integer NOT NULL,
	`from_min` integer NOT NULL,
	`to_min` integer NOT NULL,
	`break_from_min` integer,
	`break_to_min` integer,
	FOREIGN KEY (`staff_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "working_hours_weekday" CHECK("working_hours"."weekday" BETWEEN 1 AND 7),
	CONSTRAINT "working_hours_span" CHECK("working_hours"."from_min" >= 0 AND "working_hours"."from_min" < "working_hours"."to_min" AND "working_hours"."to_min" <= 1440),
	CONSTRAINT "working_hours_break_whole" CHECK(("working_hours"."break_from_min" IS NULL) = ("working_hours"."break_to_min" IS NULL)),
	CONSTRAINT "working_hours_break_span" CHECK("working_hours"."break_from_min" IS NULL OR ("working_hours"."from_min" <= "working_hours"."break_from_min" AND "working_hours"."break_from_min" < "working_hours"."break_to_min" AND "working_hours"."break_to_min" <= "working_hours"."to_min"))
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `working_hours_once` ON `working_hours` (`staff_id`,`weekday`);--> statement-breakpoint
ALTER TABLE `companies` ADD `latitude` real;--> statement-breakpoint
ALTER TABLE `companies` ADD `longitude` real;--> statement-breakpoint
ALTER TABLE `companies` ADD `travel_road_factor` real;--> statement-breakpoint
ALTER TABLE `companies` ADD `travel_speed_km_per_h` real;--> statement-breakpoint
ALTER TABLE `staff` ADD `base_street` text;--> statement-breakpoint
ALTER TABLE `staff` ADD `base_postcode` text;--> statement-breakpoint
ALTER TABLE `staff` ADD `base_city` text;--> statement-breakpoint
ALTER TABLE `staff` ADD `base_latitude` real;--> statement-breakpoint
ALTER TABLE `staff` ADD `base_longitude` real;--> statement-breakpoint
ALTER TABLE `jobs` ADD `priority` integer DEFAULT 1 NOT NULL;--> statement-breakpoint
ALTER TABLE `jobs` ADD `wanted_from_on` text;--> statement-breakpoint
ALTER TABLE `jobs` ADD `wanted_to_on` text;--> statement-breakpoint
ALTER TABLE `jobs` ADD `latest_on` text;--> statement-breakpoint
ALTER TABLE `jobs` ADD `latest_why` text;--> statement-breakpoint
ALTER TABLE `jobs` ADD `expected_min` integer;--> statement-breakpoint
ALTER TABLE `visits` ADD `start_min` integer;--> statement-breakpoint
ALTER TABLE `visits` ADD `is_technician_pinned` integer DEFAULT false NOT NULL;--> statement-breakpoint
ALTER TABLE `visits` ADD `is_day_pinned` integer DEFAULT false NOT NULL;--> statement-breakpoint
ALTER TABLE `visits` ADD `is_start_pinned` integer DEFAULT false NOT NULL;--> statement-breakpoint
ALTER TABLE `visits` ADD `promised_on` text;--> statement-breakpoint
ALTER TABLE `visits` ADD `revision` integer DEFAULT 0 NOT NULL;