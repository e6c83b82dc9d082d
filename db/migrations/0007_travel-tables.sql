CREATE TABLE `travel_tables` (
	`id` text PRIMARY KEY NOT NULL,
	`file_name` text NOT NULL,
	`attachment_id` text NOT NULL,
	`pairs` text NOT NULL,
	`loaded_by_id` text NOT NULL,
	`loaded_at` text NOT NULL,
	`withdrawn_at` text,
	FOREIGN KEY (`attachment_id`) REFERENCES `attachments`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`loaded_by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "travel_tables_pairs" CHECK("travel_tables"."pairs" IS NULL OR json_valid("travel_tables"."pairs"))
) STRICT;
--> statement-breakpoint
CREATE INDEX `travel_tables_by_load` ON `travel_tables` (`loaded_at`);