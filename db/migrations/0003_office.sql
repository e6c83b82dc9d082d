CREATE TABLE `imports` (
	`id` text PRIMARY KEY NOT NULL,
	`file_name` text NOT NULL,
	`attachment_id` text NOT NULL,
	`mapping` text NOT NULL,
	`counts` text NOT NULL,
	`device_id` text NOT NULL,
	`incarnation` text NOT NULL,
	`first_seq` integer NOT NULL,
	`last_seq` integer NOT NULL,
	`imported_by_id` text NOT NULL,
	`imported_at` text NOT NULL,
	`undone_by_id` text,
	`undone_at` text,
	FOREIGN KEY (`attachment_id`) REFERENCES `attachments`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`imported_by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`undone_by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "imports_mapping" CHECK("imports"."mapping" IS NULL OR json_valid("imports"."mapping")),
	CONSTRAINT "imports_counts" CHECK("imports"."counts" IS NULL OR json_valid("imports"."counts")),
	CONSTRAINT "imports_span" CHECK("imports"."first_seq" <= "imports"."last_seq"),
	CONSTRAINT "imports_undone" CHECK(("imports"."undone_at" IS NULL) = ("imports"."undone_by_id" IS NULL))
) STRICT;
--> statement-breakpoint
CREATE TABLE `message_events` (
	`id` text PRIMARY KEY NOT NULL,
	`message_id` text NOT NULL,
	`kind` text NOT NULL,
	`happened_on` text NOT NULL,
	`note` text,
	`by_id` text NOT NULL,
	`at` text NOT NULL,
	FOREIGN KEY (`message_id`) REFERENCES `messages`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "message_events_kind" CHECK("message_events"."kind" IN ('sent', 'bounced', 'answered', 'withdrawn')),
	CONSTRAINT "message_events_on" CHECK("message_events"."happened_on" IS NULL OR "message_events"."happened_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]')
) STRICT;
--> statement-breakpoint
CREATE INDEX `message_events_by_message` ON `message_events` (`message_id`);--> statement-breakpoint
CREATE TABLE `message_templates` (
	`id` text PRIMARY KEY NOT NULL,
	`kind` text NOT NULL,
	`channel` text NOT NULL,
	`language` text NOT NULL,
	`subject` text NOT NULL,
	`body` text NOT NULL,
	`updated_by_id` text NOT NULL,
	`updated_at` text NOT NULL,
	FOREIGN KEY (`updated_by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "message_templates_kind" CHECK("message_templates"."kind" IN ('service-due', 'first-year', 'appointment', 'registration', 'recall')),
	CONSTRAINT "message_templates_channel" CHECK("message_templates"."channel" IN ('letter', 'e-mail')),
	CONSTRAINT "message_templates_language" CHECK("message_templates"."language" IN ('en', 'fr', 'es'))
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `message_templates_once` ON `message_templates` (`kind`,`channel`,`language`);--> statement-breakpoint
CREATE TABLE `messages` (
	`id` text PRIMARY KEY NOT NULL,
	`kind` text NOT NULL,
	`channel` text NOT NULL,
	`language` text NOT NULL,
	`party_id` text NOT NULL,
	`appliance_id` text,
	`visit_id` text,
	`recall_id` text,
	`about_on` text,
	`subject` text NOT NULL,
	`body` text NOT NULL,
	`attachment_id` text,
	`prepared_by_id` text NOT NULL,
	`prepared_at` text NOT NULL,
	FOREIGN KEY (`party_id`) REFERENCES `parties`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`appliance_id`) REFERENCES `appliances`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`visit_id`) REFERENCES `visits`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`recall_id`) REFERENCES `recalls`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`attachment_id`) REFERENCES `attachments`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`prepared_by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "messages_kind" CHECK("messages"."kind" IN ('service-due', 'first-year', 'appointment', 'registration', 'recall')),
	CONSTRAINT "messages_channel" CHECK("messages"."channel" IN ('e-mail', 'text', 'phone', 'letter')),
	CONSTRAINT "messages_language" CHECK("messages"."language" IN ('en', 'fr', 'es')),
	CONSTRAINT "messages_about" CHECK("messages"."about_on" IS NULL OR "messages"."about_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]')
) STRICT;
--> statement-breakpoint
CREATE INDEX `messages_by_appliance` ON `messages` (`appliance_id`);--> statement-breakpoint
CREATE INDEX `messages_by_party` ON `messages` (`party_id`);--> statement-breakpoint
CREATE INDEX `messages_by_time` ON `messages` (`prepared_at`);--> statement-breakpoint
CREATE TABLE `packet_batch_items` (
	`id` text PRIMARY KEY NOT NULL,
	`batch_id` text NOT NULL,
	`position` integer NOT NULL,
	`run_id` text NOT NULL,
	`state` text NOT NULL,
	`why` text,
	`gap_count` integer,
	`packet_pdf_id` text,
	`packet_zip_id` text,
	`done_at` text,
	FOREIGN KEY (`batch_id`) REFERENCES `packet_batches`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`run_id`) REFERENCES `runs`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`packet_pdf_id`) REFERENCES `attachments`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`packet_zip_id`) REFERENCES `attachments`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "packet_batch_items_state" CHECK("packet_batch_items"."state" IN ('waiting', 'built', 'failed')),
	CONSTRAINT "packet_batch_items_why" CHECK(("packet_batch_items"."state" = 'failed') = ("packet_batch_items"."why" IS NOT NULL))
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `packet_batch_items_once` ON `packet_batch_items` (`batch_id`,`run_id`);--> statement-breakpoint
CREATE TABLE `packet_batches` (
	`id` text PRIMARY KEY NOT NULL,
	`is_draft` integer NOT NULL,
	`started_by_id` text NOT NULL,
	`started_at` text NOT NULL,
	`cancelled_at` text,
	FOREIGN KEY (`started_by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict
) STRICT;
--> statement-breakpoint
CREATE TABLE `recall_outcomes` (
	`id` text PRIMARY KEY NOT NULL,
	`recall_id` text NOT NULL,
	`appliance_id` text NOT NULL,
	`outcome` text NOT NULL,
	`happened_on` text NOT NULL,
	`note` text,
	`by_id` text NOT NULL,
	FOREIGN KEY (`recall_id`) REFERENCES `recalls`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`appliance_id`) REFERENCES `appliances`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "recall_outcomes_outcome" CHECK("recall_outcomes"."outcome" IN ('done', 'not-affected', 'refused')),
	CONSTRAINT "recall_outcomes_on" CHECK("recall_outcomes"."happened_on" IS NULL OR "recall_outcomes"."happened_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]')
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `recall_outcomes_once` ON `recall_outcomes` (`recall_id`,`appliance_id`);--> statement-breakpoint
CREATE INDEX `recall_outcomes_by_appliance` ON `recall_outcomes` (`appliance_id`);--> statement-breakpoint
CREATE TABLE `recalls` (
	`id` text PRIMARY KEY NOT NULL,
	`title` text NOT NULL,
	`number` text,
	`source` text NOT NULL,
	`maker` text NOT NULL,
	`models` text NOT NULL,
	`serial_ranges` text NOT NULL,
	`altitude_min_m` real,
	`altitude_max_m` real,
	`issued_on` text NOT NULL,
	`what_to_do` text NOT NULL,
	`closed_on` text,
	`added_by_id` text NOT NULL,
	`added_at` text NOT NULL,
	FOREIGN KEY (`added_by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "recalls_models" CHECK("recalls"."models" IS NULL OR json_valid("recalls"."models")),
	CONSTRAINT "recalls_serial_ranges" CHECK("recalls"."serial_ranges" IS NULL OR json_valid("recalls"."serial_ranges")),
	CONSTRAINT "recalls_issued" CHECK("recalls"."issued_on" IS NULL OR "recalls"."issued_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
	CONSTRAINT "recalls_closed" CHECK("recalls"."closed_on" IS NULL OR "recalls"."closed_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
	CONSTRAINT "recalls_altitude" CHECK("recalls"."altitude_min_m" IS NULL OR "recalls"."altitude_max_m" IS NULL OR "recalls"."altitude_min_m" <= "recalls"."altitude_max_m")
) STRICT;
--> statement-breakpoint
PRAGMA foreign_keys=OFF;--> statement-breakpoint
CREATE TABLE `__new_claims` (
	`id` text PRIMARY KEY NOT NULL,
	`appliance_id` text NOT NULL,
	`part_number` text NOT NULL,
	`part_name` text,
	`opened_on` text NOT NULL,
	`sent_on` text,
	`part_returned_on` text,
	`claim_number` text,
	`outcome` text NOT NULL,
	`decided_on` text,
	`parts_minor_units` integer,
	`labour_minor_units` integer,
	`currency` text,
	`parts_outcome` text,
	`labour_outcome` text,
	`parts_granted_minor_units` integer,
	`labour_granted_minor_units` integer,
	`refused_because` text,
	`note` text,
	FOREIGN KEY (`appliance_id`) REFERENCES `appliances`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "claims_outcome" CHECK("__new_claims"."outcome" IN ('open', 'granted', 'granted-in-part', 'refused', 'withdrawn')),
	CONSTRAINT "claims_parts_outcome" CHECK("__new_claims"."parts_outcome" IS NULL OR "__new_claims"."parts_outcome" IN ('granted', 'granted-in-part', 'refused')),
	CONSTRAINT "claims_labour_outcome" CHECK("__new_claims"."labour_outcome" IS NULL OR "__new_claims"."labour_outcome" IN ('granted', 'granted-in-part', 'refused')),
	CONSTRAINT "claims_currency" CHECK(("__new_claims"."parts_minor_units" IS NULL AND "__new_claims"."labour_minor_units" IS NULL) OR length("__new_claims"."currency") = 3),
	CONSTRAINT "claims_opened" CHECK("__new_claims"."opened_on" IS NULL OR "__new_claims"."opened_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]')
) STRICT;
--> statement-breakpoint
INSERT INTO `__new_claims`("id", "appliance_id", "part_number", "opened_on", "sent_on", "part_returned_on", "claim_number", "outcome", "decided_on", "parts_minor_units", "labour_minor_units", "currency", "note") SELECT "id", "appliance_id", "part_number", "opened_on", "sent_on", "part_returned_on", "claim_number", "outcome", "decided_on", "parts_minor_units", "labour_minor_units", "currency", "note" FROM `claims`;--> statement-breakpoint
DROP TABLE `claims`;--> statement-breakpoint
ALTER TABLE `__new_claims` RENAME TO `claims`;--> statement-breakpoint
PRAGMA foreign_keys=ON;--> statement-breakpoint
CREATE INDEX `claims_by_appliance` ON `claims` (`appliance_id`);--> statement-breakpoint
CREATE INDEX `appliances_by_serial` ON `appliances` (`serial`,`id`);--> statement-breakpoint
CREATE INDEX `party_roles_by_party` ON `party_roles` (`party_id`);