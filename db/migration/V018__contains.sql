-- What a tub carries by what was known when it was filled, so that a formula or an ingredient changed since takes
-- nothing off its label. Both are empty for tubs of before: then the formula as it is says all.
alter table lot add column allergens text;
alter table lot add column tags text;
