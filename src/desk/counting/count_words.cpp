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

std::string lot_text(const Lot& lot) {
  return lot.lot.empty() ? said("no lot recorded") : fmt::format("lot {}", lot.lot);
}

std::string signed_amount(const Money& money) {
  return fmt::format("{}{}", money.minor > 0 ? "+" : "", amount_words(money));
}

/// "1 fewer (-412.00 EUR)", "agrees".
std::string difference_words(const CountFinding& finding) {
  const int difference = finding.difference();
  if (difference == 0) return "agrees";
  const auto money = finding.value();
  return fmt::format(
      "{} {}{}", number_words(std::abs(difference)), difference < 0 ? "fewer" : "more",
      money ? fmt::format(" ({})", signed_amount(*money)) : said(" (cost not known)"));
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
                          : fmt::format("{}: {}", refused.column, refused.reason);
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
  for (const auto& [side, word] : {std::pair{&sums[0], "short"}, std::pair{&sums[1], "over"}}) {
    std::vector<Money> amounts;
    for (const auto& [currency, sum] : *side) amounts.push_back(sum);
    if (!amounts.empty()) parts.push_back(fmt::format("{} {}", amounts_words(amounts), word));
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
  return fmt::format("{}{}{}{}.", refused.row > 0 ? say("Row {}", refused.row) : said("Count"),
                     refused.column.empty() ? "" : fmt::format(", {}", refused.column),
                     refused.column.empty() ? " " : ": ", refused.reason);
}

std::string count_summary(const CountReview& review) {
  const auto agree = std::ssize(review.findings) - review.differing();
  auto text = say("{} counted: {} {}, {} {}",
                  count_words(std::ssize(review.findings), "lot was", "lots were"),
                  number_words(agree), agree == 1 ? "agrees" : "agree",
                  number_words(review.differing()), review.differing() == 1 ? "differs" : "differ");
  if (const auto sum = sum_words(review); !sum.empty()) text += fmt::format(" ({})", sum);
  text += ".";
  if (review.moved() > 0) {
    text +=
        say(" {} moved since the sheet was written.", count_words(review.moved(), "lot", "lots"));
  }
  if (review.blank > 0) {
    text += say(" {} blank and left alone.", count_words(review.blank, "row is", "rows are"));
  }
  if (!review.refused.empty()) {
    text += say(" {} not taken.", count_words(std::ssize(review.refused), "row was", "rows were"));
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
