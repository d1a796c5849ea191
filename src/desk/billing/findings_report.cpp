#include <map>
#include <tuple>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/billing/both_sides.hpp"
#include "desk/billing/finding_words.hpp"
#include "desk/billing/report_cells.hpp"
#include "desk/billing/reports.hpp"
#include "desk/papers/list_cells.hpp"

namespace sparewell::desk {
namespace {

using billing::WorkItem;
using billing::WorkState;
using exchange::ListFormat;
using exchange::ListSheet;
using exchange::ListTotal;

std::string state_of(const WorkItem& item) {
  switch (item.state) {
    case WorkState::waiting:
      return said("Waits for an answer");
    case WorkState::settled:
      return said("Settled");
    default:
      return item.has_changed ? said("Open, changed since it was answered") : said("Open");
  }
}

/// Of the money at stake, else of the amounts that are shown.
std::optional<Currency> currency_of(const billing::BillingFinding& found) {
  for (const auto* money : {&found.money, &found.our_amount, &found.their_amount}) {
    if (*money) return (*money)->currency;
  }
  return std::nullopt;
}

/// "P-0012, left", or the supplier.
std::string whom(const billing::BillingFinding& found) {
  if (found.patient.empty()) return found.supplier.text;
  return fmt::format("{}{}", found.patient.text,
                     found.side ? fmt::format(", {}", shown_word(*found.side)) : "");
}

exchange::ListCell number_cell(std::size_t place) {
  return pieces_cell(static_cast<int>(place) + 1);
}

exchange::ListRow row_of(const WorkItem& item, std::size_t place) {
  const auto& found = item.finding;
  const auto currency = currency_of(found);
  // Of a warranty these are days, see BillingFinding::wear_age.
  const bool has_pieces = found.quantity > 0 && found.kind != billing::FindingKind::warranty_due;
  const auto pieces = [&](int count) {
    return has_pieces ? pieces_cell(count) : exchange::ListCell{};
  };
  return {{number_cell(place), finding_title(found.kind), state_of(item), whom(found), found.payer,
           found.item.text, found.code, found.reference, found.since, pieces_cell(item.age_days),
           pieces(found.ours), pieces(found.theirs), money_cell_in(found.our_amount, currency),
           money_cell_in(found.their_amount, currency), money_cell_in(found.money, currency),
           currency_cell(currency)},
          false};
}

ListSheet all_findings(const Books& books, Date today) {
  auto sheet = report_sheet(said("Findings"), said("Findings of billing"), today,
                            {{said("No."), ListFormat::whole},
                             {said("Finding")},
                             {said("State")},
                             {said("Patient or supplier")},
                             {said("Payer")},
                             {said("Item")},
                             {said("Code")},
                             {said("Reference")},
                             {said("Since"), ListFormat::date},
                             {said("Age in days"), ListFormat::whole},
                             {said("Our pieces"), ListFormat::whole},
                             {said("Their pieces"), ListFormat::whole},
                             {said("Our amount"), ListFormat::money},
                             {said("Their amount"), ListFormat::money},
                             {said("At stake"), ListFormat::money},
                             {said("Currency")}});
  sheet.total = ListTotal{said("Total"), 1, 14, 15};
  long long unknown = 0;
  for (std::size_t i = 0; i < books.items.size(); ++i) {
    if (!books.items[i].finding.money) ++unknown;
    sheet.rows.push_back(row_of(books.items[i], i));
  }
  sheet.closing.emplace_back(said(
      "At stake: above zero the clinic is to receive it, below zero it has to give it back or was, "
      "or will be, charged it."));
  if (unknown > 0) {
    sheet.closing.push_back(say_n("{} row has no known sum at stake and is not in the totals.",
                                  "{} rows have no known sum at stake and are not in the totals.",
                                  static_cast<unsigned long>(unknown), number_words(unknown)));
  }
  return sheet;
}

ListSheet finding_sentences(const Books& books, Date today) {
  auto sheet = report_sheet(said("In words"), said("Findings of billing, in words"), today,
                            {{said("No."), ListFormat::whole},
                             {said("What it is")},
                             {said("Likely cause")},
                             {said("What settles it")}});
  for (std::size_t i = 0; i < books.items.size(); ++i) {
    const auto& found = books.items[i].finding;
    sheet.rows.push_back(
        {{number_cell(i), finding_sentence(found), cause_words(found), remedy_words(found)},
         false});
  }
  return sheet;
}

ListSheet finding_records(const Clinic& clinic, const Books& books, Date today) {
  auto sheet =
      report_sheet(said("Both sides"), said("The records on both sides of each finding"), today,
                   {{said("No."), ListFormat::whole}, {said("Side")}, {said("Record")}});
  for (std::size_t i = 0; i < books.items.size(); ++i) {
    const auto sides = both_sides(clinic, books.items[i].finding);
    for (const auto* side : {&sides.ours, &sides.theirs}) {
      for (const auto& line : side->lines) {
        sheet.rows.push_back({{number_cell(i), side->title, line}, false});
      }
      if (!side->lines.empty() || side->empty.empty()) continue;
      sheet.rows.push_back({{number_cell(i), side->title, side->empty}, false});
    }
  }
  return sheet;
}

ListSheet findings_by_kind(const Books& books, Date today) {
  auto sheet = report_sheet(said("By kind"), said("Findings of billing, by kind"), today,
                            {{said("Book")},
                             {said("Finding")},
                             {said("State")},
                             {said("Findings"), ListFormat::whole},
                             {said("At stake"), ListFormat::money},
                             {said("Currency")}});
  sheet.total = ListTotal{said("Total"), 0, 4, 5};
  struct Sum {
    int findings = 0;
    std::optional<Money> money;
  };
  std::map<std::tuple<billing::FindingKind, std::string, std::optional<Currency>>, Sum> sums;
  for (const auto& item : books.items) {
    const auto& money = item.finding.money;
    std::optional<Currency> currency;
    if (money) currency = money->currency;
    Sum& sum = sums[{item.finding.kind, state_of(item), currency}];
    ++sum.findings;
    if (money) sum.money = sum.money ? *sum.money + *money : *money;
  }
  for (const auto& [of, sum] : sums) {
    const auto& [kind, state, currency] = of;
    sheet.rows.push_back(
        {{book_words(billing::book_of(kind)), finding_title(kind), state, pieces_cell(sum.findings),
          money_cell(sum.money), currency_cell(currency)},
         false});
  }
  return sheet;
}

}  // namespace

exchange::ListWorkbook findings_report(const Clinic& clinic, const Books& books, Date today) {
  return {said("Findings of billing"),
          clinic.settings.name,
          today,
          {all_findings(books, today), finding_sentences(books, today),
           finding_records(clinic, books, today), findings_by_kind(books, today)}};
}

}  // namespace sparewell::desk
