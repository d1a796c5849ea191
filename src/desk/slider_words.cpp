#include "desk/slider_words.hpp"

#include <cmath>
#include <map>
#include <set>

#include "clinic/say.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using supply::Outcome;
using Amounts = std::map<Currency, std::int64_t>;

std::string same() {
  return said("the same");
}

std::string count_difference(long long change) {
  if (change == 0) return same();
  return change > 0 ? say("{} more", number_words(change)) : say("{} fewer", number_words(-change));
}

/// Means are told to a tenth, so that a smaller change is none.
std::string mean_difference(double from, double to) {
  const double change = std::round(10 * to) / 10 - std::round(10 * from) / 10;
  if (std::abs(change) < 0.05) return same();
  return change > 0 ? say("{:.1f} more", change) : say("{:.1f} fewer", -change);
}

std::string money_difference(std::int64_t change, const Currency& currency) {
  if (change == 0) return same();
  return change > 0 ? say("{} more", amount_words({change, currency}))
                    : say("{} less", amount_words({-change, currency}));
}

std::int64_t amount(const Amounts& amounts, const Currency& currency) {
  const auto found = amounts.find(currency);
  return found == amounts.end() ? 0 : found->second;
}

TableRow row(std::string id, std::string measure, std::string usual, std::string other,
             std::string difference) {
  TableRow made;
  made.strong = difference != same();
  made.id = std::move(id);
  made.cells = {{std::move(measure), std::nullopt},
                {std::move(usual), std::nullopt},
                {std::move(other), std::nullopt},
                {std::move(difference), std::nullopt}};
  return made;
}

TableRow count_row(const char* id, const char* measure, int usual, int other) {
  return row(id, said(measure), number_words(usual), number_words(other),
             count_difference(other - usual));
}

TableRow mean_row(const char* id, const char* measure, double usual, double other) {
  return row(id, said(measure), say("{:.1f}", usual), say("{:.1f}", other),
             mean_difference(usual, other));
}

std::set<Currency> currencies(const Amounts& a, const Amounts& b) {
  std::set<Currency> made;
  for (const auto* amounts : {&a, &b}) {
    for (const auto& [currency, minor] : *amounts) made.insert(currency);
  }
  return made;
}

void add_amounts(std::vector<TableRow>& rows, const std::string& id, const char* measure,
                 const Amounts& usual, const Amounts& other) {
  for (const Currency& currency : currencies(usual, other)) {
    const auto from = amount(usual, currency);
    const auto to = amount(other, currency);
    rows.push_back(row(id + currency.code, said(measure), amount_words({from, currency}),
                       amount_words({to, currency}), money_difference(to - from, currency)));
  }
}

}  // namespace

std::vector<Column> slider_columns() {
  return {{said("Measure"), 38, Align::left, "", 2},
          {said("By the settings"), 15, Align::right, said("Ordering today")},
          {said("By the sliders"), 15, Align::right, ""},
          {said("Difference"), 17, Align::left, "", 1}};
}

std::vector<TableRow> slider_rows(const Outcome& usual, const Outcome& other) {
  std::vector<TableRow> rows;
  rows.push_back(count_row("lines", to_say("Order lines"), usual.lines, other.lines));
  rows.push_back(count_row("pieces", to_say("Pieces"), usual.pieces, other.pieces));
  add_amounts(rows, "goods ", to_say("Goods"), usual.goods, other.goods);
  add_amounts(rows, "freight ", to_say("Freight"), usual.freight, other.freight);
  rows.push_back(count_row("below", to_say("Items that miss their target"),
                           usual.items_below_target, other.items_below_target));
  rows.push_back(mean_row("short_before", to_say("Pieces missing before this order arrives"),
                          usual.short_before, other.short_before));
  rows.push_back(mean_row("short_after", to_say("Pieces missing before the next one arrives"),
                          usual.short_after, other.short_after));
  rows.push_back(mean_row("late", to_say("Parts for patients that come too late"),
                          usual.patients_late, other.patients_late));
  return rows;
}

std::string difference_words(const Outcome& usual, const Outcome& other) {
  std::vector<std::string> parts;
  if (other.lines != usual.lines) {
    const auto change = static_cast<unsigned long>(std::abs(other.lines - usual.lines));
    parts.push_back(other.lines > usual.lines
                        ? say_n("{} order line more", "{} order lines more", change, change)
                        : say_n("{} order line fewer", "{} order lines fewer", change, change));
  }
  for (const Currency& currency : currencies(usual.goods, other.goods)) {
    const auto change = amount(other.goods, currency) - amount(usual.goods, currency);
    if (change != 0) parts.push_back(money_difference(change, currency));
  }
  const std::string orders = parts.empty()
                                 ? std::string{said("The orders come to the same lines and money.")}
                                 : say("Than by the settings: {}.", list_words(parts));
  const auto missing = mean_difference(usual.short_after, other.short_after);
  const auto late = mean_difference(usual.patients_late, other.patients_late);
  return orders + ' ' +
         (missing == same() && late == same()
              ? std::string{said("As many pieces are expected to be missing, and to come late.")}
              : say("Pieces expected to be missing before the next order arrives: {}; parts for "
                    "patients too late: {}.",
                    missing, late));
}

}  // namespace sparewell::desk
