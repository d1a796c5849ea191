#include "desk/what_if_page.hpp"

#include <map>
#include <set>

#include "clinic/say.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

std::string mean_words(double mean) {
  return mean > 0 && mean < 0.05 ? said("under 0.1") : say("{:.1f}", mean);
}

struct Measure {
  const char* id;
  const char* title;
  std::string (*words)(const supply::Outcome&);
};

constexpr Measure measures[] = {
    {"lines", to_say("Lines ordered"),
     [](const supply::Outcome& o) {
       return number_words(o.lines) +
              (o.without_price > 0 ? say(" ({} without a price)", o.without_price) : "");
     }},
    {"pieces", to_say("Pieces ordered"),
     [](const supply::Outcome& o) { return number_words(o.pieces); }},
    {"short_before", to_say("Pieces missing before this order arrives"),
     [](const supply::Outcome& o) { return mean_words(o.short_before); }},
    {"short_after", to_say("Pieces missing before the next one arrives"),
     [](const supply::Outcome& o) { return mean_words(o.short_after); }},
    {"late", to_say("Parts ordered for patients that come too late"),
     [](const supply::Outcome& o) { return mean_words(o.patients_late); }},
    {"below", to_say("Items that miss their target"),
     [](const supply::Outcome& o) { return number_words(o.items_below_target); }},
};

using Amounts = std::map<Currency, std::int64_t>;

/// A row a currency, so that amounts stand below each other.
void add_amounts(std::vector<TableRow>& rows, const std::string& id, const std::string& title,
                 const std::vector<Compared>& compared, Amounts supply::Outcome::*amounts) {
  std::set<Currency> currencies;
  for (const Compared& each : compared) {
    for (const auto& [currency, minor] : each.outcome.*amounts) currencies.insert(currency);
  }
  for (const Currency& currency : currencies) {
    TableRow row{id + " " + currency.code, {{title, std::nullopt}}, "", 0, false};
    for (const Compared& each : compared) {
      const Amounts& of = each.outcome.*amounts;
      const auto found = of.find(currency);
      const Money money{found == of.end() ? 0 : found->second, currency};
      row.cells.push_back({amount_words(money), money.major()});
    }
    rows.push_back(std::move(row));
  }
}

}  // namespace

std::vector<Decision> decisions(const ClinicSettings& settings, Date today,
                                const WhatIfQuestions& questions,
                                const std::optional<Money>& budget) {
  auto usual = supply::policy_of(settings);
  usual.budget = budget;
  std::string title = budget ? say("Order today for at most {}", amount_words(*budget))
                             : std::string{said("Order today")};
  std::vector<Decision> made{{std::move(title), usual}};
  for (const int wait : questions.wait_days) {
    made.push_back({say("Wait {}", count_words(wait, "day", "days")), usual});
    made.back().policy.order_on = today + days{wait};
  }
  for (const double target : questions.service_targets) {
    made.push_back({say("{:.4g} % target", 100 * target), usual});
    made.back().policy.service_target = target;
    made.back().policy.costs.shortage.reset();  // what is asked for goes before the costs
  }
  for (const SupplierName& supplier : questions.without) {
    made.push_back({say("Without {}", supplier.text), usual});
    made.back().policy.without.insert(supplier);
  }
  return made;
}

std::vector<Compared> compare(const Assessment& assessment, const WhatIfQuestions& questions) {
  return compare(assessment, questions, {[](const JobProgress&) {}, {}});
}

std::vector<Compared> compare(const Assessment& assessment, const WhatIfQuestions& questions,
                              const JobControl& control) {
  const auto lives = without_held(assessment.lives, assessment.held_needs);
  std::vector<Compared> made;
  auto asked =
      decisions(assessment.clinic.settings, assessment.today, questions, assessment.budget);
  for (auto& decision : asked) {
    if (control.stop.stop_requested()) return {};
    control.say({say("Comparing what could be decided"),
                 static_cast<double>(made.size()) / static_cast<double>(asked.size())});
    auto outcome = supply::what_if(assessment.clinic, lives, assessment.today, decision.policy);
    made.push_back({std::move(decision), std::move(outcome)});
  }
  return made;
}

Table what_if_table(const std::vector<Compared>& compared) {
  std::vector<Column> columns{{said("Measure"), 40, Align::left, "", 1}};
  for (const Compared& each : compared) {
    columns.push_back({each.decision.title, 22, Align::right, "", 1});
  }
  std::vector<TableRow> rows;
  for (const Measure& measure : measures) {
    TableRow row{measure.id, {{said(measure.title), std::nullopt}}, "", 0, false};
    for (const Compared& each : compared) {
      row.cells.push_back({measure.words(each.outcome), std::nullopt});
    }
    rows.push_back(std::move(row));
    if (rows.back().id != "pieces") continue;
    add_amounts(rows, "goods", said("Value of the goods"), compared, &supply::Outcome::goods);
    add_amounts(rows, "freight", said("Freight"), compared, &supply::Outcome::freight);
  }
  Table table{std::move(columns)};
  table.fill(std::move(rows));
  return table;
}

std::vector<std::string> risk_sentences(const Compared& compared) {
  std::vector<std::string> made;
  for (const supply::ItemAtRisk& risk : compared.outcome.at_risk) {
    std::string words = say("{}: {} to run out", risk.item.text, chance_words(risk.chance_short));
    if (risk.runs_out) {
      words += say("; one in ten by {} if nothing more is ordered", date_words(*risk.runs_out));
    }
    if (!risk.alternatives.empty()) {
      std::vector<std::string> codes;
      for (const ItemCode& code : risk.alternatives) codes.push_back(code.text);
      if (codes.size() > 4) codes.resize(4);
      words += say("; alike in kind, material and size: {}", list_words(codes));
    }
    made.push_back(words + ".");
  }
  const auto more =
      compared.outcome.items_below_target - static_cast<int>(compared.outcome.at_risk.size());
  if (more > 0) {
    made.push_back(say_n("{} more item misses their target.", "{} more items miss their target.",
                         static_cast<unsigned long>(more), number_words(more)));
  }
  return made;
}

std::string what_if_introduction() {
  return said(
      "Nothing is compared yet. Say above what you would like to know, and press Compare "
      "(Ctrl+Shift+Y): ordering today then stands beside it. It changes nothing.");
}

std::string what_if_note() {
  return said(
      "Missing pieces are means over all stocked items, without rush orders. Every column keeps to "
      "the budget that is set under Held back. Waiting means that the order is written that much "
      "later. Whether another item may be worn instead is for a licensed clinician to decide.");
}

}  // namespace sparewell::desk
