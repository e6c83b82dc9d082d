PRAGMA foreign_keys=OFF;--> statement-breakpoint
CREATE TABLE `__new_message_templates` (
	`id` text PRIMARY KEY NOT NULL,
	`kind` text NOT NULL,
	`channel` text NOT NULL,
	`language` text NOT NULL,
	`subject` text NOT NULL,
	`body` text NOT NULL,
	`updated_by_id` text NOT NULL,
	`updated_at` text NOT NULL,
	FOREIGN KEY (`updated_by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "message_templates_kind" CHECK("__new_message_templates"."kind" IN ('service-due', 'first-year', 'appointment', 'appointment-reminder', 'on-the-way', 'registration', 'recall')),
	CONSTRAINT "message_templates_channel" CHECK("__new_message_templates"."channel" IN ('letter', 'e-mail', 'text')),
	CONSTRAINT "message_templates_language" CHECK("__new_message_templates"."language" IN ('en', 'fr', 'es'))
) STRICT;
--> statement-breakpoint
INSERT INTO `__new_message_templates`("id", "kind", "channel", "language", "subject", "body", "updated_by_id", "updated_at") SELECT "id", "kind", "channel", "language", "subject", "body", "updated_by_id", "updated_at" FROM `message_templates`;--> statement-breakpoint
DROP TABLE `message_templates`;--> statement-breakpoint
ALTER TABLE `__new_message_templates` RENAME TO `message_templates`;--> statement-breakpoint
PRAGMA foreign_keys=ON;--> statement-breakpoint
CREATE UNIQUE INDEX `message_templates_once` ON `message_templates` (`kind`,`channel`,`language`);--> statement-breakpoint
CREATE TABLE `__new_messages` (
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
	CONSTRAINT "messages_kind" CHECK("__new_messages"."kind" IN ('service-due', 'first-year', 'appointment', 'appointment-reminder', 'on-the-way', 'registration', 'recall')),
	CONSTRAINT "messages_channel" CHECK("__new_messages"."channel" IN ('e-mail', 'text', 'phone', 'letter')),
	CONSTRAINT "messages_language" CHECK("__new_messages"."language" IN ('en', 'fr', 'es')),
	CONSTRAINT "messages_about" CHECK("__new_messages"."about_on" IS NULL OR "__new_messages"."about_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]')
) STRICT;
--> statement-breakpoint
INSERT INTO `__new_messages`("id", "kind", "channel", "language", "party_id", "appliance_id", "visit_id", "recall_id", "about_on", "subject", "body", "attachment_id", "prepared_by_id", "prepared_at") SELECT "id", "kind", "channel", "language", "party_id", "appliance_id", "visit_id", "recall_id", "about_on", "subject", "body", "attachment_id", "prepared_by_id", "prepared_at" FROM `messages`;--> statement-breakpoint
DROP TABLE `messages`;--> statement-breakpoint
ALTER TABLE `__new_messages` RENAME TO `messages`;--> statement-breakpoint
CREATE INDEX `messages_by_appliance` ON `messages` (`appliance_id`);--> statement-breakpoint
CREATE INDEX `messages_by_party` ON `messages` (`party_id`);--> statement-breakpoint
CREATE INDEX `messages_by_time` ON `messages` (`prepared_at`);