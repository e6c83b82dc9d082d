CREATE TABLE `run_lockouts` (
	`id` text PRIMARY KEY NOT NULL,
	`run_id` text NOT NULL,
	`item_key` text NOT NULL,
	`happened_at` text NOT NULL,
	`code` text,
	`outdoor_typed_text` text,
	`outdoor_typed_unit` text,
	`outdoor_c` real,
	`by_id` text NOT NULL,
	`recorded_at` text NOT NULL,
	`removed_at` text,
	FOREIGN KEY (`run_id`) REFERENCES `runs`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict
) STRICT;
--> statement-breakpoint
CREATE INDEX `run_lockouts_by_run` ON `run_lockouts` (`run_id`);--> statement-breakpoint
ALTER TABLE `fitted_parts` ADD `run_id` text REFERENCES runs(id) ON DELETE restrict;--> statement-breakpoint
ALTER TABLE `fitted_parts` ADD `item_key` text;--> statement-breakpoint
ALTER TABLE `fitted_parts` ADD `part_key` text;--> statement-breakpoint
ALTER TABLE `fitted_parts` ADD `recorded_by_id` text REFERENCES staff(id) ON DELETE restrict;--> statement-breakpoint
ALTER TABLE `fitted_parts` ADD `recorded_at` text;--> statement-breakpoint
ALTER TABLE `fitted_parts` ADD `removed_at` text;--> statement-breakpoint
CREATE INDEX `fitted_parts_by_run` ON `fitted_parts` (`run_id`);