CREATE TABLE `instrument_mappings` (
	`id` text PRIMARY KEY NOT NULL,
	`instrument_id` text NOT NULL,
	`mapping` text NOT NULL,
	FOREIGN KEY (`instrument_id`) REFERENCES `instruments`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "instrument_mappings_json" CHECK("instrument_mappings"."mapping" IS NULL OR json_valid("instrument_mappings"."mapping"))
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `instrument_mappings_once` ON `instrument_mappings` (`instrument_id`);--> statement-breakpoint
DROP INDEX `run_answers_once`;--> statement-breakpoint
ALTER TABLE `run_answers` ADD `instrument_id` text REFERENCES instruments(id) ON DELETE restrict;--> statement-breakpoint
CREATE INDEX `run_answers_by_item` ON `run_answers` (`run_id`,`item_key`);