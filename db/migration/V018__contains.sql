-- What a tub carries by what was known when it was filled, so that a formula or an ingredient changed since takes
-- nothing off its label. Both are empty for tubs of before: then the formula as it is says all.
alter table lot add column allergens varchar(2000);
alter table lot add column tags varchar(2000);
