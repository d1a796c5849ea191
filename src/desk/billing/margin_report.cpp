
#include "billing/margin.hpp"
#include "clinic/say.hpp"
#include "desk/billing/report_cells.hpp"
#include "desk/billing/reports.hpp"
#include "desk/papers/list_cells.hpp"
#include "desk/part_words.hpp"

namespace sparewell::desk {
namespace {

using billing::Margin;
using billing::MarginState;
using exchange::ListFormat;
using exchange::ListSheet;
using exchange::ListTotal;

/// Why there is no margin.
std::string remark(const Margin& margin, const std::optional<Money>& cost) {
  switch (margin.state) {
    case MarginState::no_cost:
      return said("The cost is not known");
    case MarginState::no_charge:
      return said("Billed without a charge");
    case MarginState::other_currency:
      return say("Cost {}: another currency, not compared",
                 cost ? amount_words(*cost) : std::string{said("not known")});
    default:
      return "";
  }
}

struct MarginSide {
  const char* sheet;
  const char* title;
  const char* income;  ///< the column's title
  bool paid;
};

ListSheet margin_sheet(const std::vector<Margin>& margins, const ClinicIndex& index, Date today,
                       const MarginSide& side) {
  auto sheet = report_sheet(side.sheet, side.title, today,
                            {{said("Item")},
                             {said("Description")},
                             {said("Payer")},
                             {said("Pieces"), ListFormat::whole},
                             {side.income, ListFormat::money},
                             {said("Cost"), ListFormat::money},
                             {said("Margin"), ListFormat::money},
                             {said("Currency")},
                             {said("Remark")}});
  sheet.total = ListTotal{said("Total of known margins"), 1, 6, 7};
  long long unknown = 0;
  for (const Margin& margin : margins) {
    const int pieces = side.paid ? margin.pieces_answered : margin.pieces;
    if (pieces == 0) continue;
    const auto& income = side.paid ? margin.paid : margin.charge;
    const auto left = side.paid ? margin.of_paid() : margin.of_charge();
    if (!left) ++unknown;
    const auto& cost = side.paid ? margin.cost_of_answered : margin.cost;
    std::optional<Currency> currency;
    if (income) currency = income->currency;
    const Item* item = index.item(margin.item);
    sheet.rows.push_back(
        {{margin.item.text, item == nullptr ? std::string{} : item_words(*item),
          payer_words(margin.payer), pieces_cell(pieces), money_cell(income),
          cost && currency == cost->currency ? money_cell(cost) : exchange::ListCell{},
          money_cell(left), currency_cell(currency), left ? std::string{} : remark(margin, cost)},
         false});
  }
  if (unknown > 0) {
    sheet.closing.push_back(say_n("{} row has no known margin and is not in the totals.",
                                  "{} rows have no known margin and are not in the totals.",
                                  static_cast<unsigned long>(unknown), number_words(unknown)));
  }
  sheet.closing.emplace_back(said(
      "A piece costs what the last order that came before its issue cost, else what the catalogue "
      "says today."));
  return sheet;
}

}  // namespace

exchange::ListWorkbook margin_report(const Clinic& clinic, const Books& books, Date today) {
  const ClinicIndex index{clinic};
  const auto margins = billing::margins(clinic, books.claims.pairs, books.payments.answers);
  return {said("Margins"),
          clinic.settings.name,
          today,
          {margin_sheet(margins, index, today,
                        {said("By charge"), said("Charges less the cost of the pieces"),
                         said("Charge"), false}),
           margin_sheet(margins, index, today,
                        {said("By payment"),
                         said("Payments less the cost of the pieces, of answered claims"),
                         said("Paid"), true})}};
}

}  // namespace sparewell::desk
