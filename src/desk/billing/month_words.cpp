#include "desk/billing/month_words.hpp"

#include <array>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

constexpr std::array months_of_years{
    to_say("January {}"),   to_say("February {}"), to_say("March {}"),    to_say("April {}"),
    to_say("May {}"),       to_say("June {}"),     to_say("July {}"),     to_say("August {}"),
    to_say("September {}"), to_say("October {}"),  to_say("November {}"), to_say("December {}")};

std::string lower(std::string text) {
  text.front() = static_cast<char>(text.front() | 0x20);
  return text;
}

std::string value_words(const ClosedEntry& entry) {
  return fmt::format("{}, {}", count_words(entry.quantity, "piece", "pieces"),
                     entry.amount ? amount_words(*entry.amount) : said("no amount"));
}

std::string signed_words(const Money& money) {
  return fmt::format("{}{}", money.minor > 0 ? "+" : "", amount_words(money));
}

}  // namespace

std::string month_title(Date month) {
  const std::chrono::year_month_day parts{month};
  const auto* title = said(months_of_years.at(static_cast<unsigned>(parts.month()) - 1));
  return fmt::format(fmt::runtime(title), static_cast<int>(parts.year()));
}

std::string month_key(Date month) {
  return iso_text(month).substr(0, 7);
}

std::optional<Date> parse_month(const std::string& text) {
  return parse_iso_date(fmt::format("{}-01", text));
}

std::string entry_title(BookEntry entry) {
  static constexpr std::array<const char*, 5> titles{
      to_say("Parts handed out"), to_say("Claim lines"), to_say("Supplier invoices"),
      to_say("Receipts"), to_say("Payments")};
  return said(titles.at(static_cast<std::size_t>(entry)));
}

std::string close_words(const MonthClose& close) {
  return say("{}, closed{} on {} by {}{}.", month_title(close.month),
             close.number > 1 ? say(" for the {}. time", close.number) : "",
             date_words(close.closed_on), close.closed_by,
             close.note.empty() ? "" : fmt::format(": {}", close.note));
}

std::vector<std::string> total_lines(const std::vector<ClosedEntry>& entries) {
  const auto totals = billing::totals_of(entries);
  std::vector<std::string> lines;
  for (const auto& total : totals.totals) {
    lines.push_back(fmt::format("{}: {}, {}, {}.", entry_title(total.entry),
                                count_words(total.records, "record", "records"),
                                count_words(total.quantity, "piece", "pieces"),
                                amount_words(total.sum)));
  }
  for (const auto& [entry, records] : totals.without_amount) {
    lines.push_back(say("{}: {} without an amount, not in the sums.", entry_title(entry),
                        count_words(records, "record", "records")));
  }
  return lines;
}

std::string change_words(const billing::BookChange& change) {
  if (!change.before) {
    return say("Added to {}: {}, {}.", lower(entry_title(change.after->entry)), change.after->key,
               value_words(*change.after));
  }
  const auto& before = *change.before;
  const auto entry = lower(entry_title(before.entry));
  if (!change.after) {
    return say("Gone from {}: {}, {}.", entry, before.key, value_words(before));
  }
  const auto difference = change.difference();
  return say("Changed in {}: {}, from {} to {}{}.", entry, before.key, value_words(before),
             value_words(*change.after),
             difference ? fmt::format(" ({})", signed_words(*difference)) : "");
}

std::vector<std::string> summary_lines(const MonthChanges& changes) {
  const auto& since = changes.since;
  std::vector<std::string> lines;
  if (since.changes.empty()) {
    lines.emplace_back(said("Nothing has changed since it was closed."));
  } else {
    const auto text = say_n("{} record has changed since it was closed",
                            "{} records have changed since it was closed", since.changes.size(),
                            number_words(std::ssize(since.changes)));
    std::vector<std::string> sums;
    for (const auto& sum : sums_of(since.changes)) {
      sums.push_back(fmt::format("{} {}", lower(entry_title(sum.entry)), signed_words(sum.sum)));
    }
    lines.push_back(sums.empty() ? fmt::format("{}.", text)
                                 : fmt::format("{}: {}.", text, list_words(sums)));
  }
  if (!since.revalued.empty()) {
    std::vector<std::string> sums;
    for (const auto& sum : sums_of(since.revalued)) sums.push_back(signed_words(sum.sum));
    lines.push_back(
        say_n("{} part is worth something else by today's catalogue{}; that changes nothing that "
              "was booked.",
              "{} parts are worth something else by today's catalogue{}; that changes nothing that "
              "was booked.",
              since.revalued.size(), number_words(std::ssize(since.revalued)),
              sums.empty() ? "" : fmt::format(" ({})", list_words(sums))));
  }
  return lines;
}

std::string still_open_words(int open) {
  if (open == 0) return "";
  return say_n("{} finding of this month or earlier is open.",
               "{} findings of this month or earlier are open.", static_cast<unsigned long>(open),
               number_words(open));
}

}  // namespace sparewell::desk
