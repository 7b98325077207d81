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
--     technique            text     volatile, intravenous, regional, or what the trade calls them (TIVA, GA, spinal …)
--     agent                text     sevoflurane, isoflurane, desflurane, halothane, enflurane or a beginning of these (sevo);
--                                   empty, null or a word such as none or propofol for none
--     age_years            number   may be null
--     weight_kg            number   may be null
--     mean_flow_l_per_min  number   mean fresh gas flow; may be null throughout
--     liquid_ml            number   liquid agent used in the case; may be null throughout
--   )
--
-- Words are read as the importer reads them: a named agent makes a case a volatile one, whatever other technique stands
-- beside it, and one that is named in the technique alone counts as well, unless the words begin with a “no”. A case
-- whose agent or technique is none of those that are known is left out.
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
-- Letters alone, small and without accents.
folded as (
  select
    anaesthetics.*,
    trim(translate(lower(coalesce(agent, '')),
      'äáàâãåéèêëíìîïóòôõöúùûüñç0123456789.,;:+-*/()[]&_?!%"=<>|–’“”',
      'aaaaaaeeeeiiiiooooouuuunc                                    ')) as agent_text,
    trim(translate(lower(coalesce(technique, '')),
      'äáàâãåéèêëíìîïóòôõöúùûüñç0123456789.,;:+-*/()[]&_?!%"=<>|–’“”',
      'aaaaaaeeeeiiiiooooouuuunc                                    ')) as technique_text
  from anaesthetics
),
-- With a blank before and behind each word.
words as (
  select folded.*, ' ' || agent_text || ' ' as agent_words, ' ' || technique_text || ' ' as technique_words
  from folded
),
-- Where each agent is named among the words, 9999 where it is not, or where the words deny it.
placed as (
  select
    words.*,
    case when agent_words like ' kein%' or agent_words like ' no %' or agent_words like ' non %'
      or agent_words like ' not %' or agent_words like ' none %' or agent_words like ' without %'
      or agent_words like ' ohne %' or agent_words like ' sans %' or agent_words like ' aucun %'
      or agent_words like ' sin %' or agent_words like ' senza %' or agent_words like ' geen %'
      or agent_words like ' zonder %' or agent_words like ' nil %'
      then 1 else 0 end as agent_denied,
    case when technique_words like ' kein%' or technique_words like ' no %' or technique_words like ' non %'
      or technique_words like ' not %' or technique_words like ' none %' or technique_words like ' without %'
      or technique_words like ' ohne %' or technique_words like ' sans %' or technique_words like ' aucun %'
      or technique_words like ' sin %' or technique_words like ' senza %' or technique_words like ' geen %'
      or technique_words like ' zonder %' or technique_words like ' nil %'
      then 1 else 0 end as technique_denied,
    case when agent_words like '% sevo%' then position(' sevo' in agent_words) else 9999 end as agent_sevoflurane_at,
    case when agent_words like '% desflu%' then position(' desflu' in agent_words) else 9999 end as agent_desflurane_at,
    case when agent_words like '% isoflu%' then position(' isoflu' in agent_words) else 9999 end as agent_isoflurane_at,
    case when agent_words like '% haloth%' then position(' haloth' in agent_words) else 9999 end as agent_halothane_at,
    case when agent_words like '% enflu%' then position(' enflu' in agent_words) else 9999 end as agent_enflurane_at,
    case when technique_words like '% sevo%' then position(' sevo' in technique_words) else 9999 end as technique_sevoflurane_at,
    case when technique_words like '% desflu%' then position(' desflu' in technique_words) else 9999 end as technique_desflurane_at,
    case when technique_words like '% isoflu%' then position(' isoflu' in technique_words) else 9999 end as technique_isoflurane_at,
    case when technique_words like '% haloth%' then position(' haloth' in technique_words) else 9999 end as technique_halothane_at,
    case when technique_words like '% enflu%' then position(' enflu' in technique_words) else 9999 end as technique_enflurane_at
  from words
),
ordered as (
  select
    placed.*,
    least(agent_sevoflurane_at, agent_desflurane_at, agent_isoflurane_at, agent_halothane_at, agent_enflurane_at) as agent_first_at,
    least(technique_sevoflurane_at, technique_desflurane_at, technique_isoflurane_at, technique_halothane_at, technique_enflurane_at) as technique_first_at
  from placed
),
-- The first agent that is named counts: that of the agent’s column, else one among the words of the technique.
met as (
  select
    ordered.*,
    case
      when agent_text in ('', 'none', 'no', 'kein', 'keine', 'keines', 'aucun', 'ninguno', 'nessuno', 'geen', 'nil', 'na', 'n a', 'tiva', 'propofol') then ''
      when agent_text like 'sev%' then 'sevoflurane'
      when agent_text like 'des%' then 'desflurane'
      when agent_text like 'iso%' then 'isoflurane'
      when agent_text like 'hal%' then 'halothane'
      when agent_text like 'enf%' then 'enflurane'
      when agent_denied = 1 or agent_first_at = 9999 then 'unknown'
      when agent_sevoflurane_at = agent_first_at then 'sevoflurane'
      when agent_desflurane_at = agent_first_at then 'desflurane'
      when agent_isoflurane_at = agent_first_at then 'isoflurane'
      when agent_halothane_at = agent_first_at then 'halothane'
      when agent_enflurane_at = agent_first_at then 'enflurane'
      else 'unknown'
    end as agent_met,
    case
      when technique_denied = 1 or technique_first_at = 9999 then ''
      when technique_sevoflurane_at = technique_first_at then 'sevoflurane'
      when technique_desflurane_at = technique_first_at then 'desflurane'
      when technique_isoflurane_at = technique_first_at then 'isoflurane'
      when technique_halothane_at = technique_first_at then 'halothane'
      when technique_enflurane_at = technique_first_at then 'enflurane'
      else ''
    end as agent_among,
    case
      when technique_words like '% tiva %' or technique_words like '% tci %' or technique_words like '% total %' then 'intravenous'
      when technique_words like '% volatil %' or technique_words like '% volatile %'
        or technique_words like '% volatils %' or technique_words like '% volatiles %'
        or technique_words like '% inhal%' or technique_words like '% balanced %'
        or technique_words like '% balanciert%' or technique_words like '% vapor %'
        or technique_words like '% vapour %' or technique_words like '% gas %' then 'volatile'
      when technique_words like '% intraven%' or technique_words like '% iv %'
        or technique_words like '% propofol %' then 'intravenous'
      when technique_words like '% general%' or technique_words like '% ga %' or technique_words like '% itn %' then 'volatile'
      when technique_words like '% spinal%' or technique_words like '% epidural%'
        or technique_words like '% peridural%' or technique_words like '% pda %' or technique_words like '% spa %'
        or technique_words like '% regional%' or technique_words like '% rachi%'
        or technique_words like '% caudal %' or technique_words like '% plexus%' or technique_words like '% block %'
        or technique_words like '% blocks %' or technique_words like '% local%'
        or technique_words like '% neuraxial%' or technique_words like '% raquidea %' then 'regional'
      when technique_words like '% sedat%' then 'intravenous'
      else 'unknown'
    end as technique_met
  from ordered
),
told as (
  select
    met.*,
    case when agent_met = '' then agent_among else agent_met end as told_agent,
    case when agent_met = '' and agent_among = '' then technique_met else 'volatile' end as told_technique
  from met
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
    and told_technique <> 'unknown'
    and told_agent <> 'unknown'
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
