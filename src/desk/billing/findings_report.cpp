#include <map>
#include <tuple>

#include <fmt/format.h>
#include <fmt/ranges.h>

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
      return "Waits for an answer";
    case WorkState::settled:
      return "Settled";
    default:
      return item.has_changed ? "Open, changed since it was answered" : "Open";
  }
}

/// Of the money at stake, else of the amounts that are shown.
std::optional<Currency> currency_of(const billing::BillingFinding& found) {
  for (const auto* money : {&found.money, &found.our_amount, &found.their_amount}) {
    if (*money) return (*money)->currency;
  }
  return std::nullopt;
}

std::string records_words(const SideOfBooks& side) {
  if (side.lines.empty()) return side.empty;
  return fmt::format("{}: {}", side.title, fmt::join(side.lines, "; "));
}

exchange::ListRow row_of(const WorkItem& item, const Clinic& clinic) {
  const auto& found = item.finding;
  const auto currency = currency_of(found);
  const auto sides = both_sides(clinic, found);
  const auto pieces = [&](int count) {
    return found.quantity == 0 ? exchange::ListCell{} : pieces_cell(count);
  };
  const bool is_warranty = found.kind == billing::FindingKind::warranty_due;
  return {{finding_title(found.kind),
           state_of(item),
           found.patient.text,
           found.side ? std::string{word(*found.side)} : std::string{},
           found.payer,
           found.supplier.text,
           found.item.text,
           found.code,
           found.reference,
           found.since,
           pieces_cell(item.age_days),
           is_warranty ? exchange::ListCell{} : pieces(found.ours),
           is_warranty ? exchange::ListCell{} : pieces(found.theirs),
           pieces(found.quantity),
           money_cell_in(found.our_amount, currency),
           money_cell_in(found.their_amount, currency),
           money_cell_in(found.money, currency),
           currency_cell(currency),
           finding_sentence(found),
           cause_words(found),
           remedy_words(found),
           records_words(sides.ours),
           records_words(sides.theirs)},
          false};
}

ListSheet all_findings(const Clinic& clinic, const Books& books, Date today) {
  auto sheet = report_sheet("Findings", "Findings of billing", today,
                            {{"Finding"},
                             {"State"},
                             {"Patient"},
                             {"Side"},
                             {"Payer"},
                             {"Supplier"},
                             {"Item"},
                             {"Code"},
                             {"Reference"},
                             {"Since", ListFormat::date},
                             {"Age in days", ListFormat::whole},
                             {"Our pieces", ListFormat::whole},
                             {"Their pieces", ListFormat::whole},
                             {"Pieces apart", ListFormat::whole},
                             {"Our amount", ListFormat::money},
                             {"Their amount", ListFormat::money},
                             {"At stake", ListFormat::money},
                             {"Currency"},
                             {"What it is"},
                             {"Likely cause"},
                             {"What settles it"},
                             {"Our records"},
                             {"Their records"}});
  sheet.total = ListTotal{"Total", 0, 16, 17};
  long long unknown = 0;
  for (const auto& item : books.items) {
    if (!item.finding.money) ++unknown;
    sheet.rows.push_back(row_of(item, clinic));
  }
  sheet.closing.emplace_back(
      "At stake: above zero the clinic is to receive it, below zero it has to give it back or was, "
      "or will be, charged it.");
  say_left_out(sheet, unknown, "sum at stake");
  return sheet;
}

ListSheet findings_by_kind(const Books& books, Date today) {
  auto sheet = report_sheet("By kind", "Findings of billing, by kind", today,
                            {{"Book"},
                             {"Finding"},
                             {"State"},
                             {"Findings", ListFormat::whole},
                             {"At stake", ListFormat::money},
                             {"Currency"}});
  sheet.total = ListTotal{"Total", 0, 4, 5};
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
        {{std::string{book_words(billing::book_of(kind))}, finding_title(kind), state,
          pieces_cell(sum.findings), money_cell(sum.money), currency_cell(currency)},
         false});
  }
  return sheet;
}

}  // namespace

exchange::ListWorkbook findings_report(const Clinic& clinic, const Books& books, Date today) {
  return {"Findings of billing",
          clinic.settings.name,
          today,
          {all_findings(clinic, books, today), findings_by_kind(books, today)}};
}

}  // namespace sparewell::desk
