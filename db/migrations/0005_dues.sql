CREATE TABLE `appliance_dues` (
	`appliance_id` text NOT NULL,
	`kind` text NOT NULL,
	`is_open` integer NOT NULL,
	`window_from` text NOT NULL,
	`due_on` text NOT NULL,
	`latest_on` text NOT NULL,
	`gone_on` text,
	`sureness` text NOT NULL,
	`stage` text,
	`month` text NOT NULL,
	`area` text NOT NULL,
	`maker` text NOT NULL,
	`staff_id` text,
	`time_zone` text NOT NULL,
	`job_id` text,
	`visit_id` text,
	`booked_on` text,
	PRIMARY KEY(`appliance_id`, `kind`),
	CONSTRAINT "appliance_dues_kind" CHECK("appliance_dues"."kind" IN ('registration', 'service', 'first-call', 'look-in'))
) STRICT;
--> statement-breakpoint
CREATE INDEX `appliance_dues_by_day` ON `appliance_dues` (`kind`,`is_open`,`due_on`,`appliance_id`);--> statement-breakpoint
CREATE INDEX `appliance_dues_by_round` ON `appliance_dues` (`kind`,`is_open`,`month`,`area`);--> statement-breakpoint
CREATE TABLE `derived_tables` (
	`name` text PRIMARY KEY NOT NULL,
	`rules_version` integer NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE `first_year_contacts` (
	`id` text PRIMARY KEY NOT NULL,
	`appliance_id` text NOT NULL,
	`kind` text NOT NULL,
	`outcome` text NOT NULL,
	`happened_on` text NOT NULL,
	`note` text,
	`by_id` text NOT NULL,
	FOREIGN KEY (`appliance_id`) REFERENCES `appliances`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "first_year_contacts_kind" CHECK("first_year_contacts"."kind" IN ('first-call', 'look-in')),
	CONSTRAINT "first_year_contacts_outcome" CHECK("first_year_contacts"."outcome" IN ('done', 'not-wanted')),
	CONSTRAINT "first_year_contacts_on" CHECK("first_year_contacts"."happened_on" IS NULL OR "first_year_contacts"."happened_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]')
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `first_year_contacts_once` ON `first_year_contacts` (`appliance_id`,`kind`);--> statement-breakpoint
CREATE TABLE `registration_gaps` (
	`run_id` text PRIMARY KEY NOT NULL,
	`is_sealed` integer NOT NULL,
	`gap_count` integer NOT NULL,
	`counted_at` text NOT NULL
) STRICT;
--> statement-breakpoint
CREATE INDEX `registration_gaps_by_seal` ON `registration_gaps` (`is_sealed`);--> statement-breakpoint
CREATE TABLE `transfer_notices` (
	`id` text PRIMARY KEY NOT NULL,
	`appliance_id` text NOT NULL,
	`changed_on` text NOT NULL,
	`told_on` text NOT NULL,
	`number` text,
	`by_id` text NOT NULL,
	FOREIGN KEY (`appliance_id`) REFERENCES `appliances`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "transfer_notices_changed" CHECK("transfer_notices"."changed_on" IS NULL OR "transfer_notices"."changed_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
	CONSTRAINT "transfer_notices_told" CHECK("transfer_notices"."told_on" IS NULL OR "transfer_notices"."told_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]')
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `transfer_notices_once` ON `transfer_notices` (`appliance_id`,`changed_on`);