CREATE TABLE `list_works` (
	`id` text PRIMARY KEY NOT NULL,
	`kind` text NOT NULL,
	`file_name` text NOT NULL,
	`begun_by_id` text NOT NULL,
	`begun_at` text NOT NULL,
	FOREIGN KEY (`begun_by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "list_works_kind" CHECK("list_works"."kind" IN ('take-in', 'take-out'))
) STRICT;
--> statement-breakpoint
CREATE TABLE `site_transfers` (
	`id` text PRIMARY KEY NOT NULL,
	`site_id` text NOT NULL,
	`changed_on` text NOT NULL,
	`from_customer_id` text NOT NULL,
	`to_customer_id` text NOT NULL,
	`roles` text NOT NULL,
	`by_id` text NOT NULL,
	`at` text NOT NULL,
	`taken_back_at` text,
	`taken_back_by_id` text,
	`taken_back_why` text,
	FOREIGN KEY (`site_id`) REFERENCES `sites`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`from_customer_id`) REFERENCES `customers`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`to_customer_id`) REFERENCES `customers`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`taken_back_by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "site_transfers_changed" CHECK("site_transfers"."changed_on" IS NULL OR "site_transfers"."changed_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
	CONSTRAINT "site_transfers_roles" CHECK("site_transfers"."roles" IS NULL OR json_valid("site_transfers"."roles")),
	CONSTRAINT "site_transfers_taken_back" CHECK(("site_transfers"."taken_back_at" IS NULL) = ("site_transfers"."taken_back_by_id" IS NULL) AND ("site_transfers"."taken_back_at" IS NULL) = ("site_transfers"."taken_back_why" IS NULL))
) STRICT;
--> statement-breakpoint
CREATE INDEX `site_transfers_by_site` ON `site_transfers` (`site_id`);