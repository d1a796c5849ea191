#include "desk/billing/payer_rules.hpp"

#include <algorithm>
#include <charconv>
#include <tuple>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/billing/code_tables.hpp"
#include "desk/billing/paper_noting.hpp"
#include "desk/typed_amounts.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using Kind = PayerRuleKind;

auto place_of(const PayerRule& rule) {
  return std::tie(rule.payer, rule.code, rule.rule, rule.words, rule.valid_from);
}

std::string number_text(const std::optional<int>& number) {
  return number ? fmt::format("{}", *number) : std::string{"?"};
}

std::string day_text(const std::optional<Date>& day) {
  return day ? iso_text(*day) : std::string{};
}

std::string validity_words(const PayerRule& rule) {
  if (rule.valid_from && rule.valid_to) {
    return say("{} to {}", date_words(*rule.valid_from), date_words(*rule.valid_to));
  }
  if (rule.valid_from) return say("from {}", date_words(*rule.valid_from));
  return rule.valid_to ? say("until {}", date_words(*rule.valid_to)) : std::string{};
}

Expected<std::optional<int>> read_count(const std::string& text, std::string_view field) {
  if (text.empty()) return std::optional<int>{};
  int value = 0;
  const auto* end = text.data() + text.size();
  const auto read = std::from_chars(text.data(), end, value);
  if (read.ec == std::errc{} && read.ptr == end && value >= 0 && value <= 10'000) return value;
  return refuse(say("{}: write a whole number from 0 to 10000, or leave it empty.", field));
}

Expected<std::optional<Date>> read_day(const std::string& text, std::string_view field) {
  const auto day = parse_iso_date(text);
  if (day || text.empty()) return day;
  return refuse(say("{}: write the day as 2026-01-31, or leave it empty.", field));
}

bool needs_number(Kind kind) {
  return kind == Kind::at_once || kind == Kind::in_period;
}
bool needs_days(Kind kind) {
  return kind == Kind::in_period || kind == Kind::early || kind == Kind::confirmation ||
         kind == Kind::included || kind == Kind::answer || kind == Kind::submit;
}
bool needs_words(Kind kind) {
  return kind == Kind::paper || kind == Kind::replacement_paper;
}

std::optional<Refusal> against(const PayerRule& rule) {
  const auto missing = [&](std::string_view what) {
    return Refusal{say("The rule \"{}\" needs {}.", shown_word(rule.rule), what)};
  };
  if (needs_number(rule.rule) && !rule.number) return missing(said("a number of pieces"));
  if (needs_days(rule.rule) && !rule.days) return missing(said("a number of days"));
  if (needs_words(rule.rule) && rule.words.empty())
    return missing(said("the paper that it asks for"));
  if (rule.rule == Kind::fee && !rule.amount) return missing(said("an amount"));
  if (rule.valid_from && rule.valid_to && *rule.valid_to < *rule.valid_from) {
    return Refusal{said("The last day lies before the first; correct one of them.")};
  }
  if (rule.source.empty()) return Refusal{said("Say where the rule is known from.")};
  return {};
}

Expected<PayerRule> read_rule(const RuleRequest& request, const Currency& currency) {
  PayerRule rule;
  rule.payer = request.payer;
  rule.code = request.code;
  rule.rule = request.rule;
  rule.words = request.words;
  rule.source = request.source;
  const auto number = read_count(request.number, said("Number"));
  if (!number) return tl::unexpected(number.error());
  rule.number = *number;
  const auto days_read = read_count(request.days, said("Days"));
  if (!days_read) return tl::unexpected(days_read.error());
  rule.days = *days_read;
  if (!request.amount.empty()) {
    const auto amount = typed_amount(request.amount, currency);
    if (!amount || amount->minor < 0) {
      return refuse(say("Amount: write an amount such as 480.00, or leave it empty."));
    }
    rule.amount = *amount;
  }
  const auto from = read_day(request.valid_from, said("Valid from"));
  if (!from) return tl::unexpected(from.error());
  rule.valid_from = *from;
  const auto to = read_day(request.valid_to, said("Valid to"));
  if (!to) return tl::unexpected(to.error());
  rule.valid_to = *to;
  if (auto refusal = against(rule)) return refuse(std::move(refusal->sentence));
  return rule;
}

}  // namespace

std::vector<ListedRule> listed_rules(const Clinic& clinic, Date today) {
  std::vector<ListedRule> rules;
  for (const PayerRule& rule : built_in_payer_rules()) {
    const bool replaced = std::ranges::any_of(
        clinic.payer_rules, [&](const PayerRule& own) { return place_of(own) == place_of(rule); });
    rules.push_back({rule, false, !replaced && rule.valid_on(today)});
  }
  for (const PayerRule& rule : clinic.payer_rules) {
    rules.push_back({rule, true, rule.valid_on(today)});
  }
  std::ranges::stable_sort(rules, [](const ListedRule& a, const ListedRule& b) {
    return std::tie(a.rule.payer, a.rule.code, a.rule.rule, b.rule.valid_from) <
           std::tie(b.rule.payer, b.rule.code, b.rule.rule, a.rule.valid_from);
  });
  return rules;
}

std::string rule_words(const PayerRule& rule) {
  const auto number = number_text(rule.number);
  const auto span =
      rule.days ? count_words(*rule.days, "day", "days") : std::string{said("? days")};
  switch (rule.rule) {
    case Kind::at_once:
      return say("No more than {} in use at once on one side.", number);
    case Kind::in_period:
      return say("No more than {} on one side within {}.", number, span);
    case Kind::initial_only:
      return rule.words.empty()
                 ? std::string{said("Billed once for a prosthesis.")}
                 : say("Billed once for a prosthesis; later ones under {}.", rule.words);
    case Kind::early:
      return say("A part replaced within {} needs a recorded reason.", span);
    case Kind::confirmation:
      return say("Within {} the payer may ask to confirm that it was needed.", span);
    case Kind::paper:
      return say("The paper \"{}\" has to be on file.", shown_paper(rule.words));
    case Kind::replacement_paper:
      return say("The paper \"{}\" has to be on file for a replacement.", shown_paper(rule.words));
    case Kind::included:
      return say("Work within {} of the delivery is in the price of the prosthesis.", span);
    case Kind::side_lines:
      return said("Each side on a line of its own, with its modifier.");
    case Kind::fee:
      return say("{} is paid for a piece.",
                 rule.amount ? amount_words(*rule.amount) : std::string{"?"});
    case Kind::answer:
      return say("The payer usually answers within {}.", span);
    default:
      return say("A claim has to be submitted within {} of the service.", span);
  }
}

std::vector<Column> rule_columns() {
  return {{said("Payer"), 18, Align::left, said("Empty: every payer without a rule of its own"), 1},
          {said("Code"), 11, Align::left, said("Empty: every code without a rule of its own")},
          {said("What it says"), 34, Align::left, "", 2},
          {said("Valid"), 16, Align::left, "", 1},
          {said("Whose"), 12, Align::left, said("The clinic's own go before those of the program")},
          {said("Known from"), 20, Align::left, "", 2}};
}

std::vector<TableRow> rule_rows(const std::vector<ListedRule>& rules) {
  std::vector<TableRow> rows;
  rows.reserve(rules.size());
  for (const auto& listed : rules) {
    TableRow row;
    row.id = fmt::format("{}", rows.size());
    std::string whose = listed.own ? said("the clinic's") : said("built in");
    if (!listed.in_force) whose += said(", not in force");
    row.cells = {{listed.rule.payer.empty() ? said("every payer") : listed.rule.payer, {}},
                 {listed.rule.code.empty() ? said("every code") : listed.rule.code, {}},
                 {rule_words(listed.rule), {}},
                 {validity_words(listed.rule), {}},
                 {std::move(whose), {}},
                 {listed.rule.source, {}}};
    std::string searched;
    for (const auto& cell : row.cells) searched += fmt::format("{}\n", cell.text);
    row.search = folded(searched);
    rows.push_back(std::move(row));
  }
  return rows;
}

Expected<PayerRule> set_rule(store::UnitOfWork& work, const RuleRequest& request) {
  auto rule = read_rule(request, work.settings().currency);
  if (!rule) return rule;
  for (const auto& row : work.all<PayerRule>()) {
    if (place_of(row.record) != place_of(*rule)) continue;
    if (row.record == *rule) return refuse(say("The rule is so already; nothing was changed."));
    work.put_instead(row.id, *rule);
    return rule;
  }
  work.put(*rule);
  return rule;
}

StockForm rule_form(const Day& day, const std::optional<PayerRule>& chosen) {
  StockForm form{said("Payer's rule"), {}, {}, said("&Keep"), {}, to_say("a payer's rule was set")};
  const auto rule = chosen.value_or(PayerRule{});
  form.intro = say(
      "A rule of the clinic goes before one that the program is built with. To end one, give it a "
      "last day. Amounts are in {}.",
      day.clinic().settings.currency.code);
  std::vector<std::string> kinds;
  for (const auto each : words<PayerRuleKind>()) kinds.emplace_back(each);
  form.fields = {
      {said("&Payer"), rule.payer, said("Empty: every payer without a rule of its own")},
      {said("&Code"), rule.code, said("Empty: every code without a rule of its own")},
      {said("&Rule"), std::string{word(rule.rule)}, said("What kind of rule it is"), kinds, true},
      {said("&Number"), rule.number ? fmt::format("{}", *rule.number) : "",
       said("Pieces that are allowed")},
      {said("&Days"), rule.days ? fmt::format("{}", *rule.days) : "",
       said("The span that it speaks of")},
      {said("&Amount"), rule.amount ? plain_text(*rule.amount) : "", said("Paid for a piece")},
      {said("&Words"), needs_words(rule.rule) ? shown_paper(rule.words) : rule.words,
       said("The paper that it asks for, or the code for later pieces")},
      {said("Valid &from"), day_text(rule.valid_from), said("Such as 2026-01-01; empty: always")},
      {said("Valid &to"), day_text(rule.valid_to), said("The last day; empty: still")},
      {said("Known fro&m"), chosen ? rule.source : std::string{},
       said("Such as the contract of a day")}};
  form.book = [](store::UnitOfWork& work,
                 const std::vector<std::string>& given) -> Expected<Booked> {
    const auto kind = parse_word<PayerRuleKind>(given[2]);
    if (!kind) return refuse(say("Choose what kind of rule it is."));
    const auto set = set_rule(work, {given[0], given[1], *kind, given[3], given[4], given[5],
                                     needs_words(*kind) ? paper_meant(given[6]) : given[6],
                                     given[7], given[8], given[9]});
    if (!set) return tl::unexpected(set.error());
    Booked booked;
    booked.notes.push_back(
        fmt::format("{}, {}: {}", set->payer.empty() ? said("Every payer") : set->payer,
                    set->code.empty() ? said("every code") : set->code, rule_words(*set)));
    return booked;
  };
  return form;
}

}  // namespace sparewell::desk
