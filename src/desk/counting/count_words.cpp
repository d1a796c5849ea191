#include "desk/counting/count_words.hpp"

#include <array>
#include <cstdlib>
#include <map>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/part_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

unsigned long unsigned_of(long long count) {
  return static_cast<unsigned long>(count);
}

std::string lot_text(const Lot& lot) {
  return lot.lot.empty() ? said("no lot recorded") : say("lot {}", lot.lot);
}

std::string signed_amount(const Money& money) {
  return fmt::format("{}{}", money.minor > 0 ? "+" : "", amount_words(money));
}

/// "1 fewer (-412.00 EUR)", "agrees".
std::string difference_words(const CountFinding& finding) {
  const int difference = finding.difference();
  if (difference == 0) return said("agrees");
  const auto pieces = number_words(std::abs(difference));
  const auto value = finding.value();
  const auto money = value ? signed_amount(*value) : said("cost not known");
  return difference < 0 ? say("{} fewer ({})", pieces, money) : say("{} more ({})", pieces, money);
}

std::string moved_words(const CountFinding& finding) {
  return say("moved since the sheet said {}: count it again",
             number_words(*finding.entry.on_sheet));
}

std::string standing_words(const CountFinding& finding) {
  if (finding.booked) return finding.difference() == 0 ? said("Kept: agrees") : said("Booked");
  if (finding.moved) return capitalised(moved_words(finding));
  return finding.difference() == 0 ? said("Agrees") : said("Differs");
}

std::string value_words(const CountFinding& finding) {
  if (finding.difference() == 0) return {};
  const auto value = finding.value();
  return value ? signed_amount(*value) : said("not known");
}

TableRow row_of(const CountFinding& finding, std::size_t id) {
  const auto& entry = finding.entry;
  TableRow row;
  row.id = std::to_string(id);
  row.strong = finding.difference() != 0;
  row.cells = {{standing_words(finding), std::nullopt},
               {entry.place, std::nullopt},
               {entry.lot.item.text, std::nullopt},
               {entry.lot.lot.empty() ? said("no lot recorded") : entry.lot.lot, std::nullopt},
               count_cell(finding.recorded),
               count_cell(entry.counted),
               {finding.difference() == 0 ? "0" : fmt::format("{:+}", finding.difference()),
                static_cast<double>(finding.difference())},
               {value_words(finding), std::nullopt},
               {entry.remark, std::nullopt}};
  return row;
}

TableRow row_of(const RefusedCount& refused, std::size_t id) {
  TableRow row;
  row.id = std::to_string(id);
  row.strong = true;
  row.cells.resize(9, {"", std::nullopt});
  row.cells[0].text = say("Row {} refused", refused.row);
  row.cells[8].text = refused.column.empty()
                          ? refused.reason
                          : fmt::format("{}: {}", said(refused.column.c_str()), refused.reason);
  return row;
}

/// What is missing and what is too much, by currency: "100.00 EUR short, 20.00 EUR over".
std::string sum_words(const CountReview& review) {
  std::array<std::map<Currency, Money>, 2> sums;
  for (const auto& finding : review.findings) {
    auto value = finding.value();
    if (!value || value->minor == 0) continue;
    auto& side = sums[value->minor < 0 ? 0 : 1];
    value->minor = std::abs(value->minor);
    const auto [at, is_new] = side.try_emplace(value->currency, *value);
    if (!is_new) at->second = at->second + *value;
  }
  std::vector<std::string> parts;
  for (std::size_t i = 0; i < sums.size(); ++i) {
    std::vector<Money> amounts;
    for (const auto& [currency, sum] : sums[i]) amounts.push_back(sum);
    if (amounts.empty()) continue;
    const auto words = amounts_words(amounts);
    parts.push_back(i == 0 ? say("{} short", words) : say("{} over", words));
  }
  return fmt::format("{}", fmt::join(parts, ", "));
}

}  // namespace

std::string plan_line(const supply::CountCandidate& candidate) {
  return fmt::format(
      "{}  {}  {}, {}, {}; {}", candidate.place, candidate.item.text,
      count_words(std::ssize(candidate.levels), "lot", "lots"),
      count_words(candidate.pieces, "piece", "pieces"),
      candidate.value ? amount_words(*candidate.value) : std::string{said("cost not known")},
      candidate.last_counted
          ? say("last counted {}, {} wrong of {}", date_words(*candidate.last_counted),
                candidate.wrong_counts, candidate.counts)
          : std::string{said("never counted")});
}

std::string count_line(const CountFinding& finding) {
  const auto& entry = finding.entry;
  auto text = say("{}  {} {}: {} counted, {} recorded, {}", entry.place, entry.lot.item.text,
                  lot_text(entry.lot), number_words(entry.counted), number_words(finding.recorded),
                  difference_words(finding));
  if (finding.moved) text += fmt::format("; {}", moved_words(finding));
  if (finding.booked && finding.difference() != 0) text += said("; booked");
  return text;
}

std::string refused_count_line(const RefusedCount& refused) {
  if (refused.column.empty()) {
    return refused.row > 0 ? say("Row {} {}.", refused.row, refused.reason)
                           : say("Count {}.", refused.reason);
  }
  const auto* column = said(refused.column.c_str());
  return refused.row > 0 ? say("Row {}, {}: {}.", refused.row, column, refused.reason)
                         : say("Count, {}: {}.", column, refused.reason);
}

std::string count_summary(const CountReview& review) {
  const auto all = std::ssize(review.findings);
  const auto differ = review.differing();
  const auto agree = all - differ;
  auto text = fmt::format(
      "{} {}, {}",
      say_n("{} lot was counted:", "{} lots were counted:", unsigned_of(all), number_words(all)),
      say_n("{} agrees", "{} agree", unsigned_of(agree), number_words(agree)),
      say_n("{} differs", "{} differ", unsigned_of(differ), number_words(differ)));
  if (const auto sum = sum_words(review); !sum.empty()) text += fmt::format(" ({})", sum);
  text += ".";
  if (const auto moved = review.moved(); moved > 0) {
    text += fmt::format(" {}", say_n("{} lot moved since the sheet was written.",
                                     "{} lots moved since the sheet was written.",
                                     unsigned_of(moved), number_words(moved)));
  }
  if (review.blank > 0) {
    text += fmt::format(
        " {}", say_n("{} row is blank and left alone.", "{} rows are blank and left alone.",
                     unsigned_of(review.blank), number_words(review.blank)));
  }
  if (const auto refused = std::ssize(review.refused); refused > 0) {
    text += fmt::format(" {}", say_n("{} row was not taken.", "{} rows were not taken.",
                                     unsigned_of(refused), number_words(refused)));
  }
  return text;
}

Table count_table(const CountReview& review) {
  Table table{{{said("Standing"), 20, Align::left, "", 1},
               {said("Place"), 11, Align::left, "", 1},
               {said("Item"), 11, Align::left, ""},
               {said("Lot"), 11, Align::left, ""},
               {said("Recorded"), 4, Align::right, said("Pieces by the records now")},
               {said("Counted"), 4, Align::right, said("Pieces found")},
               {said("Difference"), 4, Align::right, ""},
               {said("Value"), 15, Align::right, said("The difference at the catalogue's cost")},
               {said("Remark"), 26, Align::left,
                said("What was written beside it, or why it was refused"), 3}}};
  std::vector<TableRow> rows;
  // What needs a look comes first.
  for (const bool differs : {true, false}) {
    for (const auto& finding : review.findings) {
      if ((finding.difference() != 0) == differs) rows.push_back(row_of(finding, rows.size()));
    }
    if (!differs) continue;
    for (const auto& refused : review.refused) rows.push_back(row_of(refused, rows.size()));
  }
  table.fill(std::move(rows));
  return table;
}

}  // namespace sparewell::desk
