CREATE TABLE `device` (
	`id` text PRIMARY KEY NOT NULL,
	`device_id` text NOT NULL,
	`incarnation` text NOT NULL,
	`next_seq` integer NOT NULL,
	`last_hlc` text NOT NULL,
	`created_at` text NOT NULL,
	`purpose` text NOT NULL,
	CONSTRAINT "device_purpose" CHECK("device"."purpose" IN ('real', 'demo')),
	CONSTRAINT "device_one_row" CHECK("device"."id" = 'this')
) STRICT;
--> statement-breakpoint
CREATE TABLE `op` (
	`op_id` text PRIMARY KEY NOT NULL,
	`device_id` text NOT NULL,
	`incarnation` text NOT NULL,
	`device_seq` integer NOT NULL,
	`actor_id` text,
	`schema` integer NOT NULL,
	`kind` text NOT NULL,
	`entity` text NOT NULL,
	`entity_id` text NOT NULL,
	`fields` text NOT NULL,
	`hlc` text NOT NULL,
	`hash` text NOT NULL,
	CONSTRAINT "op_kind" CHECK("op"."kind" IN ('insert', 'update', 'delete')),
	CONSTRAINT "op_fields" CHECK("op"."fields" IS NULL OR json_valid("op"."fields"))
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `op_device_seq` ON `op` (`device_id`,`incarnation`,`device_seq`);--> statement-breakpoint
CREATE INDEX `op_by_entity` ON `op` (`entity`,`entity_id`);--> statement-breakpoint
CREATE TABLE `calibrations` (
	`id` text PRIMARY KEY NOT NULL,
	`instrument_id` text NOT NULL,
	`calibrated_on` text NOT NULL,
	`due_on` text NOT NULL,
	`certificate` text,
	FOREIGN KEY (`instrument_id`) REFERENCES `instruments`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "calibrations_on" CHECK("calibrations"."calibrated_on" IS NULL OR "calibrations"."calibrated_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
	CONSTRAINT "calibrations_due" CHECK("calibrations"."due_on" IS NULL OR "calibrations"."due_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
	CONSTRAINT "calibrations_order" CHECK("calibrations"."calibrated_on" <= "calibrations"."due_on")
) STRICT;
--> statement-breakpoint
CREATE INDEX `calibrations_by_instrument` ON `calibrations` (`instrument_id`,`due_on`);--> statement-breakpoint
CREATE TABLE `companies` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`street` text,
	`postcode` text,
	`city` text,
	`region` text,
	`country` text NOT NULL,
	`phone` text,
	`email` text,
	`licence_number` text,
	`time_zone` text NOT NULL,
	`unit_system` text NOT NULL,
	`language` text NOT NULL,
	`jurisdiction` text NOT NULL,
	`emergency_number` text,
	CONSTRAINT "companies_unit_system" CHECK("companies"."unit_system" IN ('metric', 'us')),
	CONSTRAINT "companies_language" CHECK("companies"."language" IN ('en', 'fr', 'es'))
) STRICT;
--> statement-breakpoint
CREATE TABLE `consents` (
	`id` text PRIMARY KEY NOT NULL,
	`party_id` text NOT NULL,
	`purpose` text NOT NULL,
	`channel` text NOT NULL,
	`granted` integer NOT NULL,
	`given_on` text NOT NULL,
	`source` text NOT NULL,
	FOREIGN KEY (`party_id`) REFERENCES `parties`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "consents_purpose" CHECK("consents"."purpose" IN ('appointments', 'service-due', 'registration', 'offers', 'safety')),
	CONSTRAINT "consents_channel" CHECK("consents"."channel" IN ('e-mail', 'text', 'phone', 'letter')),
	CONSTRAINT "consents_on" CHECK("consents"."given_on" IS NULL OR "consents"."given_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]')
) STRICT;
--> statement-breakpoint
CREATE INDEX `consents_by_party` ON `consents` (`party_id`);--> statement-breakpoint
CREATE TABLE `customers` (
	`id` text PRIMARY KEY NOT NULL,
	`party_id` text NOT NULL,
	`since` text NOT NULL,
	`note` text,
	FOREIGN KEY (`party_id`) REFERENCES `parties`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "customers_since" CHECK("customers"."since" IS NULL OR "customers"."since" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]')
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `customers_party` ON `customers` (`party_id`);--> statement-breakpoint
CREATE TABLE `instruments` (
	`id` text PRIMARY KEY NOT NULL,
	`kind` text NOT NULL,
	`label` text NOT NULL,
	`serial` text NOT NULL,
	`accuracy` text NOT NULL,
	`range_max` text NOT NULL,
	`kept_by` text,
	`retired_on` text,
	FOREIGN KEY (`kept_by`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "instruments_kind" CHECK("instruments"."kind" IN ('analyser', 'manometer', 'thermometer', 'water-test', 'stopwatch', 'multimeter', 'other'))
) STRICT;
--> statement-breakpoint
CREATE TABLE `licences` (
	`id` text PRIMARY KEY NOT NULL,
	`staff_id` text NOT NULL,
	`number` text NOT NULL,
	`issuer` text NOT NULL,
	`place` text NOT NULL,
	`licence_class` text NOT NULL,
	`fuel` text,
	`max_kw` real,
	`valid_from` text NOT NULL,
	`valid_to` text NOT NULL,
	FOREIGN KEY (`staff_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "licences_valid_from" CHECK("licences"."valid_from" IS NULL OR "licences"."valid_from" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
	CONSTRAINT "licences_valid_to" CHECK("licences"."valid_to" IS NULL OR "licences"."valid_to" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
	CONSTRAINT "licences_order" CHECK("licences"."valid_from" <= "licences"."valid_to"),
	CONSTRAINT "licences_max_kw" CHECK("licences"."max_kw" IS NULL OR "licences"."max_kw" > 0)
) STRICT;
--> statement-breakpoint
CREATE INDEX `licences_by_staff` ON `licences` (`staff_id`);--> statement-breakpoint
CREATE TABLE `parties` (
	`id` text PRIMARY KEY NOT NULL,
	`kind` text NOT NULL,
	`name` text NOT NULL,
	`contact_name` text,
	`language` text,
	`email` text,
	`phone_typed` text,
	`phone_e164` text,
	`street` text,
	`postcode` text,
	`city` text,
	`region` text,
	`country` text,
	`note` text,
	`search_text` text NOT NULL,
	`erased_at` text,
	CONSTRAINT "parties_kind" CHECK("parties"."kind" IN ('person', 'firm'))
) STRICT;
--> statement-breakpoint
CREATE INDEX `parties_by_name` ON `parties` (`name`);--> statement-breakpoint
CREATE TABLE `staff` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`initials` text NOT NULL,
	`phone` text,
	`email` text,
	`pin_hash` text,
	`unit_system` text,
	`active_from` text NOT NULL,
	`active_to` text,
	CONSTRAINT "staff_active_from" CHECK("staff"."active_from" IS NULL OR "staff"."active_from" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
	CONSTRAINT "staff_active_to" CHECK("staff"."active_to" IS NULL OR "staff"."active_to" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
	CONSTRAINT "staff_unit_system" CHECK("staff"."unit_system" IS NULL OR "staff"."unit_system" IN ('metric', 'us'))
) STRICT;
--> statement-breakpoint
CREATE TABLE `staff_roles` (
	`id` text PRIMARY KEY NOT NULL,
	`staff_id` text NOT NULL,
	`role` text NOT NULL,
	FOREIGN KEY (`staff_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "staff_roles_role" CHECK("staff_roles"."role" IN ('dispatcher', 'technician', 'helper', 'owner'))
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `staff_roles_once` ON `staff_roles` (`staff_id`,`role`);--> statement-breakpoint
CREATE TABLE `trainings` (
	`id` text PRIMARY KEY NOT NULL,
	`staff_id` text NOT NULL,
	`maker` text NOT NULL,
	`model_line` text NOT NULL,
	`number` text,
	`valid_from` text NOT NULL,
	`valid_to` text,
	FOREIGN KEY (`staff_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict
) STRICT;
--> statement-breakpoint
CREATE TABLE `appliance_dates` (
	`id` text PRIMARY KEY NOT NULL,
	`appliance_id` text NOT NULL,
	`kind` text NOT NULL,
	`happened_on` text NOT NULL,
	`precision` text NOT NULL,
	`source` text NOT NULL,
	FOREIGN KEY (`appliance_id`) REFERENCES `appliances`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "appliance_dates_kind" CHECK("appliance_dates"."kind" IN ('made', 'sold', 'installed', 'started', 'occupied', 'title-transfer')),
	CONSTRAINT "appliance_dates_precision" CHECK("appliance_dates"."precision" IN ('day', 'month', 'year')),
	CONSTRAINT "appliance_dates_on" CHECK("appliance_dates"."happened_on" IS NULL OR "appliance_dates"."happened_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]')
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `appliance_dates_once` ON `appliance_dates` (`appliance_id`,`kind`);--> statement-breakpoint
CREATE TABLE `appliances` (
	`id` text PRIMARY KEY NOT NULL,
	`serial` text NOT NULL,
	`serial_key` text NOT NULL,
	`maker` text NOT NULL,
	`model` text NOT NULL,
	`sheet_id` text,
	`plate_fuel` text,
	`tag_fuel` text,
	`rated_input_kw` real,
	`rated_input_basis` text NOT NULL,
	`vent_kind` text,
	`vent_length_m` real,
	`vent_elbows` integer,
	`is_vent_concealed` integer,
	`supersedes_id` text,
	`note` text,
	CONSTRAINT "appliances_basis" CHECK("appliances"."rated_input_basis" IN ('gross', 'net')),
	CONSTRAINT "appliances_plate_fuel" CHECK("appliances"."plate_fuel" IS NULL OR "appliances"."plate_fuel" IN ('natural-gas', 'propane', 'butane', 'heating-oil')),
	CONSTRAINT "appliances_tag_fuel" CHECK("appliances"."tag_fuel" IS NULL OR "appliances"."tag_fuel" IN ('natural-gas', 'propane', 'butane', 'heating-oil')),
	CONSTRAINT "appliances_rating" CHECK("appliances"."rated_input_kw" IS NULL OR "appliances"."rated_input_kw" > 0)
) STRICT;
--> statement-breakpoint
CREATE INDEX `appliances_by_serial_key` ON `appliances` (`serial_key`);--> statement-breakpoint
CREATE UNIQUE INDEX `appliances_maker_serial` ON `appliances` (`maker`,`serial`);--> statement-breakpoint
CREATE TABLE `fuel_states` (
	`id` text PRIMARY KEY NOT NULL,
	`appliance_id` text NOT NULL,
	`fuel` text NOT NULL,
	`from_on` text NOT NULL,
	`conversion_kit` text,
	`orifice` text,
	`proof` text,
	FOREIGN KEY (`appliance_id`) REFERENCES `appliances`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "fuel_states_fuel" CHECK("fuel_states"."fuel" IN ('natural-gas', 'propane', 'butane', 'heating-oil')),
	CONSTRAINT "fuel_states_from" CHECK("fuel_states"."from_on" IS NULL OR "fuel_states"."from_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]')
) STRICT;
--> statement-breakpoint
CREATE INDEX `fuel_states_by_appliance` ON `fuel_states` (`appliance_id`,`from_on`);--> statement-breakpoint
CREATE TABLE `gas_loads` (
	`id` text PRIMARY KEY NOT NULL,
	`gas_supply_id` text NOT NULL,
	`name` text NOT NULL,
	`input_kw` real NOT NULL,
	`appliance_id` text,
	FOREIGN KEY (`gas_supply_id`) REFERENCES `gas_supplies`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`appliance_id`) REFERENCES `appliances`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "gas_loads_input" CHECK("gas_loads"."input_kw" > 0)
) STRICT;
--> statement-breakpoint
CREATE INDEX `gas_loads_by_supply` ON `gas_loads` (`gas_supply_id`);--> statement-breakpoint
CREATE TABLE `gas_supplies` (
	`id` text PRIMARY KEY NOT NULL,
	`kind` text NOT NULL,
	`fuel` text NOT NULL,
	`number` text,
	`dial_m3` real,
	`compensation` text,
	`capacity_m3_per_h` real,
	`regulator` text,
	`nominal_mbar_g` real,
	`tank_volume_l` real,
	`heating_value_mj_per_m3` real,
	`heating_value_typed` text,
	`heating_value_source` text,
	`heating_value_on` text,
	CONSTRAINT "gas_supplies_kind" CHECK("gas_supplies"."kind" IN ('meter', 'tank')),
	CONSTRAINT "gas_supplies_fuel" CHECK("gas_supplies"."fuel" IN ('natural-gas', 'propane', 'butane', 'heating-oil')),
	CONSTRAINT "gas_supplies_compensation" CHECK("gas_supplies"."compensation" IS NULL OR "gas_supplies"."compensation" IN ('none', 'temperature', 'temperature-pressure')),
	CONSTRAINT "gas_supplies_heating_value" CHECK("gas_supplies"."heating_value_mj_per_m3" IS NULL OR "gas_supplies"."heating_value_mj_per_m3" BETWEEN 5 AND 160),
	CONSTRAINT "gas_supplies_heating_value_on" CHECK("gas_supplies"."heating_value_on" IS NULL OR "gas_supplies"."heating_value_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]')
) STRICT;
--> statement-breakpoint
CREATE TABLE `gas_supply_sites` (
	`id` text PRIMARY KEY NOT NULL,
	`gas_supply_id` text NOT NULL,
	`site_id` text NOT NULL,
	`unit` text,
	FOREIGN KEY (`gas_supply_id`) REFERENCES `gas_supplies`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`site_id`) REFERENCES `sites`(`id`) ON UPDATE no action ON DELETE restrict
) STRICT;
--> statement-breakpoint
CREATE INDEX `gas_supply_sites_by_site` ON `gas_supply_sites` (`site_id`);--> statement-breakpoint
CREATE TABLE `party_roles` (
	`id` text PRIMARY KEY NOT NULL,
	`party_id` text NOT NULL,
	`role` text NOT NULL,
	`site_id` text,
	`appliance_id` text,
	`from_on` text,
	`to_on` text,
	`note` text,
	FOREIGN KEY (`party_id`) REFERENCES `parties`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`site_id`) REFERENCES `sites`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`appliance_id`) REFERENCES `appliances`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "party_roles_role" CHECK("party_roles"."role" IN ('owner', 'landlord', 'builder', 'occupant', 'payer', 'key-holder', 'fitter', 'supplier')),
	CONSTRAINT "party_roles_where" CHECK(("party_roles"."site_id" IS NULL) <> ("party_roles"."appliance_id" IS NULL)),
	CONSTRAINT "party_roles_from" CHECK("party_roles"."from_on" IS NULL OR "party_roles"."from_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
	CONSTRAINT "party_roles_to" CHECK("party_roles"."to_on" IS NULL OR "party_roles"."to_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]')
) STRICT;
--> statement-breakpoint
CREATE INDEX `party_roles_by_site` ON `party_roles` (`site_id`);--> statement-breakpoint
CREATE INDEX `party_roles_by_appliance` ON `party_roles` (`appliance_id`);--> statement-breakpoint
CREATE TABLE `placements` (
	`id` text PRIMARY KEY NOT NULL,
	`appliance_id` text NOT NULL,
	`site_id` text NOT NULL,
	`unit` text,
	`plant_group` text,
	`position` text,
	`from_on` text,
	`to_on` text,
	FOREIGN KEY (`appliance_id`) REFERENCES `appliances`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`site_id`) REFERENCES `sites`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "placements_from" CHECK("placements"."from_on" IS NULL OR "placements"."from_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
	CONSTRAINT "placements_to" CHECK("placements"."to_on" IS NULL OR "placements"."to_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]')
) STRICT;
--> statement-breakpoint
CREATE INDEX `placements_by_site` ON `placements` (`site_id`);--> statement-breakpoint
CREATE INDEX `placements_by_appliance` ON `placements` (`appliance_id`);--> statement-breakpoint
CREATE TABLE `site_emitters` (
	`id` text PRIMARY KEY NOT NULL,
	`site_id` text NOT NULL,
	`emitter` text NOT NULL,
	`zone` text,
	`rated_kw` real,
	`removed_at` text,
	FOREIGN KEY (`site_id`) REFERENCES `sites`(`id`) ON UPDATE no action ON DELETE restrict
) STRICT;
--> statement-breakpoint
CREATE INDEX `site_emitters_by_site` ON `site_emitters` (`site_id`);--> statement-breakpoint
CREATE TABLE `sites` (
	`id` text PRIMARY KEY NOT NULL,
	`customer_id` text NOT NULL,
	`label` text,
	`street` text NOT NULL,
	`postcode` text,
	`city` text NOT NULL,
	`region` text,
	`country` text NOT NULL,
	`latitude` real,
	`longitude` real,
	`jurisdiction` text NOT NULL,
	`time_zone` text NOT NULL,
	`building_kind` text NOT NULL,
	`access` text,
	`altitude_m` real,
	`system_height_m` real,
	`system_volume_l` real,
	`system_volume_how` text,
	`cold_water_c` real,
	`glycol_kind` text,
	`search_text` text NOT NULL,
	FOREIGN KEY (`customer_id`) REFERENCES `customers`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "sites_building_kind" CHECK("sites"."building_kind" IN ('home', 'rental', 'new-build', 'commercial')),
	CONSTRAINT "sites_altitude" CHECK("sites"."altitude_m" IS NULL OR "sites"."altitude_m" BETWEEN -500 AND 9000),
	CONSTRAINT "sites_height" CHECK("sites"."system_height_m" IS NULL OR "sites"."system_height_m" BETWEEN 0 AND 400),
	CONSTRAINT "sites_volume" CHECK("sites"."system_volume_l" IS NULL OR "sites"."system_volume_l" > 0),
	CONSTRAINT "sites_volume_how" CHECK("sites"."system_volume_how" IS NULL OR "sites"."system_volume_how" IN ('metered', 'estimated')),
	CONSTRAINT "sites_glycol" CHECK("sites"."glycol_kind" IS NULL OR "sites"."glycol_kind" IN ('propylene', 'ethylene'))
) STRICT;
--> statement-breakpoint
CREATE INDEX `sites_by_customer` ON `sites` (`customer_id`);--> statement-breakpoint
CREATE TABLE `attachment_links` (
	`id` text PRIMARY KEY NOT NULL,
	`attachment_id` text NOT NULL,
	`entity` text NOT NULL,
	`entity_id` text NOT NULL,
	`item_key` text,
	`removed_at` text,
	FOREIGN KEY (`attachment_id`) REFERENCES `attachments`(`id`) ON UPDATE no action ON DELETE restrict
) STRICT;
--> statement-breakpoint
CREATE INDEX `attachment_links_by_entity` ON `attachment_links` (`entity`,`entity_id`);--> statement-breakpoint
CREATE TABLE `attachments` (
	`id` text PRIMARY KEY NOT NULL,
	`sha256` text NOT NULL,
	`media_type` text NOT NULL,
	`byte_length` integer NOT NULL,
	`file_name` text NOT NULL,
	`origin` text NOT NULL,
	`derived_from_id` text,
	`taken_at` text,
	`exif_at` text,
	`clock_offset_s` integer,
	`subject` text NOT NULL,
	`added_by_id` text NOT NULL,
	`added_at` text NOT NULL,
	FOREIGN KEY (`added_by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "attachments_origin" CHECK("attachments"."origin" IN ('original', 'derived')),
	CONSTRAINT "attachments_sha256" CHECK(length("attachments"."sha256") = 64),
	CONSTRAINT "attachments_length" CHECK("attachments"."byte_length" >= 0)
) STRICT;
--> statement-breakpoint
CREATE INDEX `attachments_by_hash` ON `attachments` (`sha256`);--> statement-breakpoint
CREATE TABLE `claims` (
	`id` text PRIMARY KEY NOT NULL,
	`appliance_id` text NOT NULL,
	`part_number` text NOT NULL,
	`opened_on` text NOT NULL,
	`sent_on` text,
	`part_returned_on` text,
	`claim_number` text,
	`outcome` text NOT NULL,
	`decided_on` text,
	`parts_minor_units` integer,
	`labour_minor_units` integer,
	`currency` text,
	`note` text,
	FOREIGN KEY (`appliance_id`) REFERENCES `appliances`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "claims_outcome" CHECK("claims"."outcome" IN ('open', 'granted', 'granted-in-part', 'refused', 'withdrawn')),
	CONSTRAINT "claims_currency" CHECK(("claims"."parts_minor_units" IS NULL AND "claims"."labour_minor_units" IS NULL) OR length("claims"."currency") = 3),
	CONSTRAINT "claims_opened" CHECK("claims"."opened_on" IS NULL OR "claims"."opened_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]')
) STRICT;
--> statement-breakpoint
CREATE INDEX `claims_by_appliance` ON `claims` (`appliance_id`);--> statement-breakpoint
CREATE TABLE `day_heads` (
	`id` text PRIMARY KEY NOT NULL,
	`day` text NOT NULL,
	`seal_count` integer NOT NULL,
	`sha256` text NOT NULL,
	`computed_at` text NOT NULL,
	CONSTRAINT "day_heads_day" CHECK("day_heads"."day" IS NULL OR "day_heads"."day" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]')
) STRICT;
--> statement-breakpoint
CREATE INDEX `day_heads_by_day` ON `day_heads` (`day`);--> statement-breakpoint
CREATE TABLE `issued_documents` (
	`id` text PRIMARY KEY NOT NULL,
	`kind` text NOT NULL,
	`run_id` text,
	`attachment_id` text NOT NULL,
	`is_draft` integer NOT NULL,
	`gap_reason` text,
	`issued_by_id` text NOT NULL,
	`issued_at` text NOT NULL,
	FOREIGN KEY (`run_id`) REFERENCES `runs`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`attachment_id`) REFERENCES `attachments`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`issued_by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "issued_documents_kind" CHECK("issued_documents"."kind" IN ('packet-pdf', 'record-json', 'packet-zip'))
) STRICT;
--> statement-breakpoint
CREATE INDEX `issued_documents_by_run` ON `issued_documents` (`run_id`);--> statement-breakpoint
CREATE TABLE `permits` (
	`id` text PRIMARY KEY NOT NULL,
	`site_id` text NOT NULL,
	`appliance_id` text,
	`number` text NOT NULL,
	`issuer` text NOT NULL,
	`state` text NOT NULL,
	`given_on` text,
	FOREIGN KEY (`site_id`) REFERENCES `sites`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`appliance_id`) REFERENCES `appliances`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "permits_state" CHECK("permits"."state" IN ('applied', 'issued', 'inspected', 'closed', 'refused')),
	CONSTRAINT "permits_on" CHECK("permits"."given_on" IS NULL OR "permits"."given_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]')
) STRICT;
--> statement-breakpoint
CREATE INDEX `permits_by_site` ON `permits` (`site_id`);--> statement-breakpoint
CREATE TABLE `registrations` (
	`id` text PRIMARY KEY NOT NULL,
	`appliance_id` text NOT NULL,
	`job_id` text,
	`state` text NOT NULL,
	`by` text NOT NULL,
	`owner_consent_on` text,
	`follow_up_on` text,
	`submitted_on` text,
	`confirmed_on` text,
	`number` text,
	`proof_attachment_id` text,
	`note` text,
	FOREIGN KEY (`appliance_id`) REFERENCES `appliances`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`job_id`) REFERENCES `jobs`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`proof_attachment_id`) REFERENCES `attachments`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "registrations_state" CHECK("registrations"."state" IN ('recording', 'ready', 'submitted', 'confirmed')),
	CONSTRAINT "registrations_by" CHECK("registrations"."by" IN ('office', 'owner')),
	CONSTRAINT "registrations_consent" CHECK("registrations"."owner_consent_on" IS NULL OR "registrations"."owner_consent_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
	CONSTRAINT "registrations_follow_up" CHECK("registrations"."follow_up_on" IS NULL OR "registrations"."follow_up_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
	CONSTRAINT "registrations_submitted" CHECK("registrations"."submitted_on" IS NULL OR "registrations"."submitted_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
	CONSTRAINT "registrations_confirmed" CHECK("registrations"."confirmed_on" IS NULL OR "registrations"."confirmed_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]')
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `registrations_appliance` ON `registrations` (`appliance_id`);--> statement-breakpoint
CREATE TABLE `seal_disclosures` (
	`id` text PRIMARY KEY NOT NULL,
	`seal_id` text NOT NULL,
	`path` text NOT NULL,
	`salt` text,
	`value` text,
	`party_id` text,
	FOREIGN KEY (`seal_id`) REFERENCES `seals`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`party_id`) REFERENCES `parties`(`id`) ON UPDATE no action ON DELETE restrict
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `seal_disclosures_once` ON `seal_disclosures` (`seal_id`,`path`);--> statement-breakpoint
CREATE TABLE `seals` (
	`id` text PRIMARY KEY NOT NULL,
	`visit_id` text NOT NULL,
	`run_id` text NOT NULL,
	`sequence` integer NOT NULL,
	`kind` text NOT NULL,
	`canonical` text NOT NULL,
	`sha256` text NOT NULL,
	`previous_sha256` text,
	`sealed_by_id` text NOT NULL,
	`sealed_at` text NOT NULL,
	FOREIGN KEY (`visit_id`) REFERENCES `visits`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`run_id`) REFERENCES `runs`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`sealed_by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "seals_kind" CHECK("seals"."kind" IN ('sealed', 'amendment')),
	CONSTRAINT "seals_canonical" CHECK("seals"."canonical" IS NULL OR json_valid("seals"."canonical")),
	CONSTRAINT "seals_first" CHECK(("seals"."sequence" = 1) = ("seals"."previous_sha256" IS NULL))
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `seals_chain` ON `seals` (`visit_id`,`sequence`);--> statement-breakpoint
CREATE INDEX `seals_by_run` ON `seals` (`run_id`);--> statement-breakpoint
CREATE TABLE `service_agreements` (
	`id` text PRIMARY KEY NOT NULL,
	`appliance_id` text NOT NULL,
	`party_id` text NOT NULL,
	`number` text,
	`every_months` integer NOT NULL,
	`from_on` text NOT NULL,
	`to_on` text,
	FOREIGN KEY (`appliance_id`) REFERENCES `appliances`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`party_id`) REFERENCES `parties`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "service_agreements_from" CHECK("service_agreements"."from_on" IS NULL OR "service_agreements"."from_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]')
) STRICT;
--> statement-breakpoint
CREATE INDEX `service_agreements_by_appliance` ON `service_agreements` (`appliance_id`);--> statement-breakpoint
CREATE TABLE `sheet_revisions` (
	`id` text PRIMARY KEY NOT NULL,
	`sheet_id` text NOT NULL,
	`revision` text NOT NULL,
	`title` text NOT NULL,
	`maker` text,
	`body` text NOT NULL,
	`sha256` text NOT NULL,
	`added_at` text NOT NULL,
	`source` text NOT NULL
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `sheet_revisions_once` ON `sheet_revisions` (`sheet_id`,`revision`);--> statement-breakpoint
CREATE TABLE `firing_point_marks` (
	`id` text PRIMARY KEY NOT NULL,
	`run_id` text NOT NULL,
	`firing_point` text NOT NULL,
	`reached_at` text NOT NULL,
	`by_id` text NOT NULL,
	FOREIGN KEY (`run_id`) REFERENCES `runs`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict
) STRICT;
--> statement-breakpoint
CREATE INDEX `firing_point_marks_by_run` ON `firing_point_marks` (`run_id`);--> statement-breakpoint
CREATE TABLE `fitted_parts` (
	`id` text PRIMARY KEY NOT NULL,
	`appliance_id` text NOT NULL,
	`visit_id` text,
	`part_number` text NOT NULL,
	`name` text NOT NULL,
	`serial` text,
	`fitted_on` text NOT NULL,
	`cover_from` text,
	FOREIGN KEY (`appliance_id`) REFERENCES `appliances`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`visit_id`) REFERENCES `visits`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "fitted_parts_on" CHECK("fitted_parts"."fitted_on" IS NULL OR "fitted_parts"."fitted_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]')
) STRICT;
--> statement-breakpoint
CREATE INDEX `fitted_parts_by_appliance` ON `fitted_parts` (`appliance_id`);--> statement-breakpoint
CREATE TABLE `jobs` (
	`id` text PRIMARY KEY NOT NULL,
	`kind` text NOT NULL,
	`appliance_id` text NOT NULL,
	`opened_at` text NOT NULL,
	`closed_at` text,
	`is_chargeable` integer NOT NULL,
	`charge_reason` text,
	`outside_invoice_number` text,
	`outside_invoice_on` text,
	`note` text,
	FOREIGN KEY (`appliance_id`) REFERENCES `appliances`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "jobs_kind" CHECK("jobs"."kind" IN ('startup', 'service', 'repair', 'follow-up')),
	CONSTRAINT "jobs_invoice_on" CHECK("jobs"."outside_invoice_on" IS NULL OR "jobs"."outside_invoice_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]')
) STRICT;
--> statement-breakpoint
CREATE INDEX `jobs_by_appliance` ON `jobs` (`appliance_id`);--> statement-breakpoint
CREATE TABLE `make_safes` (
	`id` text PRIMARY KEY NOT NULL,
	`appliance_id` text NOT NULL,
	`site_id` text NOT NULL,
	`visit_id` text,
	`what` text NOT NULL,
	`isolated_how` text,
	`label_number` text,
	`told_whom` text,
	`delivered_how` text,
	`is_refused` integer NOT NULL,
	`opened_by_id` text NOT NULL,
	`opened_at` text NOT NULL,
	`closed_by_id` text,
	`closed_at` text,
	`closed_reason` text,
	FOREIGN KEY (`appliance_id`) REFERENCES `appliances`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`site_id`) REFERENCES `sites`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`visit_id`) REFERENCES `visits`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`opened_by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`closed_by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "make_safes_closing" CHECK(("make_safes"."closed_at" IS NULL) = ("make_safes"."closed_reason" IS NULL))
) STRICT;
--> statement-breakpoint
CREATE INDEX `make_safes_by_appliance` ON `make_safes` (`appliance_id`);--> statement-breakpoint
CREATE TABLE `readiness_answers` (
	`id` text PRIMARY KEY NOT NULL,
	`job_id` text NOT NULL,
	`item_key` text NOT NULL,
	`answer` text NOT NULL,
	`note` text,
	`confirmed_by` text,
	`recorded_by_id` text NOT NULL,
	`recorded_at` text NOT NULL,
	FOREIGN KEY (`job_id`) REFERENCES `jobs`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`recorded_by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "readiness_answers_answer" CHECK("readiness_answers"."answer" IN ('yes', 'no', 'unknown', 'not-applicable'))
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `readiness_answers_once` ON `readiness_answers` (`job_id`,`item_key`);--> statement-breakpoint
CREATE TABLE `readings` (
	`id` text PRIMARY KEY NOT NULL,
	`run_id` text NOT NULL,
	`visit_id` text NOT NULL,
	`step_key` text NOT NULL,
	`item_key` text NOT NULL,
	`quantity` text NOT NULL,
	`point` text,
	`sample` integer NOT NULL,
	`typed_text` text NOT NULL,
	`typed_unit` text NOT NULL,
	`value_own` real,
	`comparator` text NOT NULL,
	`not_measured_reason` text,
	`instrument_id` text,
	`measured_by_id` text NOT NULL,
	`typed_by_id` text NOT NULL,
	`measured_at` text NOT NULL,
	`typed_at` text NOT NULL,
	`superseded_by_id` text,
	`origin` text NOT NULL,
	FOREIGN KEY (`run_id`) REFERENCES `runs`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`visit_id`) REFERENCES `visits`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`instrument_id`) REFERENCES `instruments`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`measured_by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`typed_by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "readings_comparator" CHECK("readings"."comparator" IN ('=', '>', '<')),
	CONSTRAINT "readings_origin" CHECK("readings"."origin" IN ('typed', 'suggestion', 'transcribed', 'imported')),
	CONSTRAINT "readings_missing_is_not_zero" CHECK(("readings"."value_own" IS NULL) = ("readings"."not_measured_reason" IS NOT NULL)),
	CONSTRAINT "readings_sample" CHECK("readings"."sample" >= 1)
) STRICT;
--> statement-breakpoint
CREATE INDEX `readings_by_run` ON `readings` (`run_id`);--> statement-breakpoint
CREATE TABLE `run_answers` (
	`id` text PRIMARY KEY NOT NULL,
	`run_id` text NOT NULL,
	`visit_id` text NOT NULL,
	`step_key` text NOT NULL,
	`item_key` text NOT NULL,
	`value` text,
	`reason` text,
	`by_id` text NOT NULL,
	`at` text NOT NULL,
	FOREIGN KEY (`run_id`) REFERENCES `runs`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`visit_id`) REFERENCES `visits`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "run_answers_something" CHECK("run_answers"."value" IS NOT NULL OR "run_answers"."reason" IS NOT NULL)
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `run_answers_once` ON `run_answers` (`run_id`,`item_key`);--> statement-breakpoint
CREATE TABLE `run_holds` (
	`id` text PRIMARY KEY NOT NULL,
	`run_id` text NOT NULL,
	`item_key` text NOT NULL,
	`started_at` text NOT NULL,
	`required_s` integer NOT NULL,
	`ended_at` text,
	`has_clock_jumped` integer NOT NULL,
	`boot_id` text NOT NULL,
	`started_steady_ms` real NOT NULL,
	`by_id` text NOT NULL,
	FOREIGN KEY (`run_id`) REFERENCES `runs`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "run_holds_required" CHECK("run_holds"."required_s" > 0)
) STRICT;
--> statement-breakpoint
CREATE INDEX `run_holds_by_run` ON `run_holds` (`run_id`,`item_key`);--> statement-breakpoint
CREATE TABLE `run_steps` (
	`id` text PRIMARY KEY NOT NULL,
	`run_id` text NOT NULL,
	`step_key` text NOT NULL,
	`opened_at` text NOT NULL,
	`opened_by_id` text NOT NULL,
	FOREIGN KEY (`run_id`) REFERENCES `runs`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`opened_by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `run_steps_once` ON `run_steps` (`run_id`,`step_key`);--> statement-breakpoint
CREATE TABLE `run_tunings` (
	`id` text PRIMARY KEY NOT NULL,
	`run_id` text NOT NULL,
	`item_key` text NOT NULL,
	`started_at` text NOT NULL,
	`finished_at` text,
	`interrupted_at` text,
	`interrupted_reason` text,
	`by_id` text NOT NULL,
	FOREIGN KEY (`run_id`) REFERENCES `runs`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "run_tunings_one_end" CHECK("run_tunings"."finished_at" IS NULL OR "run_tunings"."interrupted_at" IS NULL)
) STRICT;
--> statement-breakpoint
CREATE INDEX `run_tunings_by_run` ON `run_tunings` (`run_id`,`item_key`);--> statement-breakpoint
CREATE TABLE `runs` (
	`id` text PRIMARY KEY NOT NULL,
	`job_id` text NOT NULL,
	`sheet_revision_id` text NOT NULL,
	`fuel` text NOT NULL,
	`started_at` text NOT NULL,
	`reopened_at` text,
	`current_step_key` text,
	`sealed_at` text,
	FOREIGN KEY (`job_id`) REFERENCES `jobs`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`sheet_revision_id`) REFERENCES `sheet_revisions`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "runs_fuel" CHECK("runs"."fuel" IN ('natural-gas', 'propane', 'butane', 'heating-oil'))
) STRICT;
--> statement-breakpoint
CREATE INDEX `runs_by_job` ON `runs` (`job_id`);--> statement-breakpoint
CREATE TABLE `sign_offs` (
	`id` text PRIMARY KEY NOT NULL,
	`run_id` text NOT NULL,
	`item_key` text NOT NULL,
	`by` text NOT NULL,
	`name` text NOT NULL,
	`staff_id` text,
	`party_id` text,
	`at` text NOT NULL,
	`signature_attachment_id` text,
	FOREIGN KEY (`run_id`) REFERENCES `runs`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`staff_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`party_id`) REFERENCES `parties`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "sign_offs_by" CHECK("sign_offs"."by" IN ('licensed', 'occupant'))
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `sign_offs_once` ON `sign_offs` (`run_id`,`item_key`);--> statement-breakpoint
CREATE TABLE `tuning_stages` (
	`id` text PRIMARY KEY NOT NULL,
	`tuning_id` text NOT NULL,
	`stage_key` text NOT NULL,
	`reached_at` text NOT NULL,
	FOREIGN KEY (`tuning_id`) REFERENCES `run_tunings`(`id`) ON UPDATE no action ON DELETE restrict
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `tuning_stages_once` ON `tuning_stages` (`tuning_id`,`stage_key`);--> statement-breakpoint
CREATE TABLE `visit_crew` (
	`id` text PRIMARY KEY NOT NULL,
	`visit_id` text NOT NULL,
	`staff_id` text NOT NULL,
	`role` text NOT NULL,
	`on_site_from` text,
	`on_site_to` text,
	FOREIGN KEY (`visit_id`) REFERENCES `visits`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`staff_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "visit_crew_role" CHECK("visit_crew"."role" IN ('lead', 'licensed', 'helper'))
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `visit_crew_once` ON `visit_crew` (`visit_id`,`staff_id`);--> statement-breakpoint
CREATE INDEX `visit_crew_by_staff` ON `visit_crew` (`staff_id`);--> statement-breakpoint
CREATE TABLE `visit_jobs` (
	`id` text PRIMARY KEY NOT NULL,
	`visit_id` text NOT NULL,
	`job_id` text NOT NULL,
	FOREIGN KEY (`visit_id`) REFERENCES `visits`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`job_id`) REFERENCES `jobs`(`id`) ON UPDATE no action ON DELETE restrict
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `visit_jobs_once` ON `visit_jobs` (`visit_id`,`job_id`);--> statement-breakpoint
CREATE INDEX `visit_jobs_by_job` ON `visit_jobs` (`job_id`);--> statement-breakpoint
CREATE TABLE `visits` (
	`id` text PRIMARY KEY NOT NULL,
	`site_id` text NOT NULL,
	`state` text NOT NULL,
	`planned_on` text NOT NULL,
	`planned_from` text,
	`planned_to` text,
	`duration_min` integer NOT NULL,
	`started_at` text,
	`ended_at` text,
	`outcome` text,
	`outcome_reason` text,
	`labour_min` integer,
	`note` text,
	FOREIGN KEY (`site_id`) REFERENCES `sites`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "visits_state" CHECK("visits"."state" IN ('pencilled', 'planned', 'travelling', 'started', 'finished', 'signed', 'cancelled')),
	CONSTRAINT "visits_outcome" CHECK("visits"."outcome" IS NULL OR "visits"."outcome" IN ('finished', 'return-needed', 'site-not-ready', 'made-safe')),
	CONSTRAINT "visits_planned_on" CHECK("visits"."planned_on" IS NULL OR "visits"."planned_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
	CONSTRAINT "visits_duration" CHECK("visits"."duration_min" BETWEEN 1 AND 5760),
	CONSTRAINT "visits_from" CHECK("visits"."planned_from" IS NULL OR "visits"."planned_from" GLOB '[0-2][0-9]:[0-5][0-9]'),
	CONSTRAINT "visits_to" CHECK("visits"."planned_to" IS NULL OR "visits"."planned_to" GLOB '[0-2][0-9]:[0-5][0-9]')
) STRICT;
--> statement-breakpoint
CREATE INDEX `visits_by_day` ON `visits` (`planned_on`);--> statement-breakpoint
CREATE INDEX `visits_by_site` ON `visits` (`site_id`);