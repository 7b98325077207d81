-- From a log of single anaesthetics to case-mix rows, in the database where the log lives: the same rows as the
-- program's own importer gives. No names, numbers, birth dates or addresses are needed, and none leave the database:
-- groups of fewer than 5 cases are put together as “Other”.
--
-- It expects a table or view
--
--   anaesthetics (
--     procedure_name       text     kind of case by which rows are grouped: a procedure or a specialty
--     day                  date     day of the case
--     minutes              number   anaesthetic time
--     technique            text     volatile, intravenous or regional; a case with an agent counts as volatile
--     agent                text     sevoflurane, isoflurane, desflurane, halothane, enflurane; empty or null for none
--     age_years            number   may be null
--     weight_kg            number   may be null
--     mean_flow_l_per_min  number   mean fresh gas flow; may be null throughout
--     liquid_ml            number   liquid agent used in the case; may be null throughout
--   )
--
-- Minutes are expected ready: engines do not agree on how times are subtracted. From timestamps they come, for example,
-- by extract(epoch from (end_time - start_time)) / 60, datediff('minute', start_time, end_time) or
-- timestampdiff(minute, start_time, end_time), whichever the engine has. Cases with minutes that are null, 0 or less, or
-- above 1440, are left out here as they are by the importer.
--
-- So make a view of that shape over your own table first, for example
--
--   create view anaesthetics as
--   select operation as procedure_name, cast(start_time as date) as day, minutes, technique, agent,
--          age as age_years, weight as weight_kg, null as mean_flow_l_per_min, null as liquid_ml
--   from theatre_log;
--
-- run this query, save its result as CSV with a line of headings, and import that into the case mix. Only functions
-- that embedded and distributed engines share are used.
--
-- minutes_low and minutes_high (and those of age and weight) lie the square root of 7 standard errors of the mean below
-- and above it: a PERT distribution between them has the standard error as its standard deviation.

with
told as (
  select
    anaesthetics.*,
    lower(trim(coalesce(anaesthetics.agent, ''))) as told_agent,
    case when trim(coalesce(anaesthetics.agent, '')) = '' then lower(trim(anaesthetics.technique)) else 'volatile' end as told_technique
  from anaesthetics
),
cases as (
  select
    trim(procedure_name) as name,
    day,
    1e0 * minutes as minutes,
    told_technique as technique,
    told_agent as agent,
    case when age_years >= 0 and age_years <= 120 then 1e0 * age_years end as age,
    case when weight_kg >= 1 and weight_kg <= 300 then 1e0 * weight_kg end as weight,
    case when mean_flow_l_per_min > 0 and mean_flow_l_per_min <= 20 then 1e0 * mean_flow_l_per_min end as flow,
    case when told_technique = 'volatile' and liquid_ml >= 0 and liquid_ml <= 2000 then 1e0 * liquid_ml end as liquid
  from told
  where trim(procedure_name) <> ''
    and day is not null
    and minutes > 0 and minutes <= 1440
    and told_technique in ('volatile', 'intravenous', 'regional')
    and told_agent in ('', 'sevoflurane', 'isoflurane', 'desflurane', 'halothane', 'enflurane')
    and not (told_technique = 'volatile' and told_agent = '')
),
-- The days that the log covers, by their Julian day numbers: engines do not agree on how dates are subtracted.
by_day as (
  select day, count(*) as n from cases group by day
),
parts as (
  select
    n,
    extract(year from day) - case when extract(month from day) <= 2 then 1 else 0 end as y,
    extract(month from day) + case when extract(month from day) <= 2 then 12 else 0 end as m,
    extract(day from day) as d
  from by_day
),
numbered as (
  select
    n,
    floor(365.25 * (y + 4716)) + floor(30.6001 * (m + 1)) + d - floor(y / 1e2) + floor(floor(y / 1e2) / 4e0) as julian
  from parts
),
-- Without dates far from the rest, as a mistyped year is: at most the first and last hundredth of the cases (two where
-- that is more, none of fewer than 20 cases) that more than 90 days part from the others, in which at their rate 20
-- cases or more would be expected. Their cases are counted all the same.
running as (
  select
    n,
    julian,
    julian - lag(julian) over (order by julian) as gap,
    sum(n) over (order by julian) - n as earlier,
    sum(n) over () as total
  from numbered
),
allowing as (
  select running.*, case when total < 20 then 0 when total < 200 then 2 else floor(total / 1e2) end as may_be_far
  from running
),
core as (
  select sum(n) as n, max(julian) - min(julian) + 1 as days
  from allowing
  where earlier + n > may_be_far and total - earlier > may_be_far
),
parted as (
  select allowing.*, case when gap > 90 and gap * core.n >= 20 * core.days then 1 else 0 end as is_parted
  from allowing
  cross join core
),
ends as (
  select
    coalesce(max(case when is_parted = 1 and earlier <= may_be_far then julian end), min(julian)) as first_day,
    coalesce(min(case when is_parted = 1 and total - earlier <= may_be_far then julian end), max(julian) + 1) as end_day
  from parted
),
span as (
  select max(julian) - min(julian) + 1 as days
  from numbered
  cross join ends
  where julian >= first_day and julian < end_day
),
-- Groups of one name, whatever its capitals; the small ones lose it.
named as (
  select lower(name) as folded, technique, agent, case when count(*) < 5 then 'Other' else max(name) end as case_group
  from cases
  group by lower(name), technique, agent
),
sums as (
  select
    named.case_group,
    cases.technique,
    cases.agent,
    count(*) as n,
    sum(minutes) / count(minutes) as minutes,
    sum(age) / count(age) as age,
    sum(weight) / count(weight) as weight,
    sum(flow) / count(flow) as flow,
    sum(liquid) / count(liquid) as liquid,
    case when count(minutes) > 1
      then (sum(minutes * minutes) - sum(minutes) * sum(minutes) / count(minutes)) / (count(minutes) - 1) / count(minutes)
    end as minutes_error2,
    case when count(age) > 1
      then (sum(age * age) - sum(age) * sum(age) / count(age)) / (count(age) - 1) / count(age)
    end as age_error2,
    case when count(weight) > 1
      then (sum(weight * weight) - sum(weight) * sum(weight) / count(weight)) / (count(weight) - 1) / count(weight)
    end as weight_error2
  from cases
  join named on named.folded = lower(cases.name) and named.technique = cases.technique and named.agent = cases.agent
  group by named.case_group, cases.technique, cases.agent
  having count(*) >= 5
),
ranges as (
  select
    sums.*,
    sqrt(7e0 * case when minutes_error2 > 0 then minutes_error2 else 0e0 end) as minutes_half,
    sqrt(7e0 * case when age_error2 > 0 then age_error2 when age_error2 is null then null else 0e0 end) as age_half,
    sqrt(7e0 * case when weight_error2 > 0 then weight_error2 when weight_error2 is null then null else 0e0 end) as weight_half
  from sums
)
select
  case_group,
  floor(n * 365.25e0 / days * 10 + 0.5) / 10 as cases,
  floor(minutes * 10 + 0.5) / 10 as minutes,
  floor(age * 10 + 0.5) / 10 as age,
  floor(weight * 10 + 0.5) / 10 as weight,
  technique,
  agent,
  floor(liquid * 10 + 0.5) / 10 as measured,
  case when minutes - minutes_half < 0.1 then 0.1e0 else floor((minutes - minutes_half) * 10) / 10 end as minutes_low,
  -floor(-(minutes + minutes_half) * 10) / 10 as minutes_high,
  case when age - age_half < 0 then 0e0 else floor((age - age_half) * 10) / 10 end as age_low,
  -floor(-(age + age_half) * 10) / 10 as age_high,
  case when weight - weight_half < 1 then 1e0 else floor((weight - weight_half) * 10) / 10 end as weight_low,
  -floor(-(weight + weight_half) * 10) / 10 as weight_high,
  floor(flow * 100 + 0.5) / 100 as mean_flow
from ranges
cross join span
order by n desc, case_group, technique, agent
