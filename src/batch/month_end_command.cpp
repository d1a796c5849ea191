#include <iostream>

#include <fmt/format.h>

#include "batch/billing_json.hpp"
#include "batch/context.hpp"
#include "desk/billing/books.hpp"
#include "desk/billing/month_close.hpp"
#include "desk/billing/month_words.hpp"

namespace sparewell::batch {
namespace {

struct Options {
  std::string month;
  std::string by;
  std::string note;
};

Date month_option(const std::string& text) {
  const auto month = desk::parse_month(text);
  if (!month) {
    throw WrongUse{fmt::format("--month '{}' is not a month; write it as YYYY-MM.", text)};
  }
  return *month;
}

Json json_of(const billing::EntryTotal& total) {
  return {{"entry", word(total.entry)},
          {"currency", total.currency.code},
          {"records", total.records},
          {"quantity", total.quantity},
          {"sum", total.sum.major()}};
}

Json json_of(const std::vector<billing::EntryTotal>& totals) {
  Json rows = Json::array();
  for (const auto& total : totals) rows.push_back(json_of(total));
  return rows;
}

Json json_of(const MonthClose& close) {
  return {{"month", desk::month_key(close.month)},
          {"number", close.number},
          {"closed_on", batch::json_of(close.closed_on)},
          {"closed_by", close.closed_by},
          {"note", close.note}};
}

Json json_of(const desk::MonthBooks& books) {
  const auto totals = billing::totals_of(books.entries);
  auto made = json_of(books.close);
  made["records"] = books.entries.size();
  made["totals"] = json_of(totals.totals);
  Json without = Json::object();
  for (const auto& [entry, records] : totals.without_amount) {
    without[std::string{word(entry)}] = records;
  }
  made["without_amount"] = std::move(without);
  return made;
}

Json json_of(const std::optional<ClosedEntry>& entry) {
  if (!entry) return nullptr;
  return {{"quantity", entry->quantity}, {"amount", exact(entry->amount)}};
}

Json json_of(const std::vector<billing::BookChange>& changes) {
  Json rows = Json::array();
  for (const auto& change : changes) {
    const auto& known = change.before ? *change.before : *change.after;
    const char* what = !change.before ? "added" : !change.after ? "gone" : "changed";
    rows.push_back({{"what", what},
                    {"entry", word(known.entry)},
                    {"key", known.key},
                    {"before", json_of(change.before)},
                    {"after", json_of(change.after)},
                    {"difference", exact(change.difference())}});
  }
  return rows;
}

void print_lines(const std::vector<std::string>& lines) {
  for (const auto& line : lines) std::cout << line << '\n';
}

int close(const Context& context, const Options& options) {
  const Date today = context.today();
  const desk::MonthCloseRequest request{month_option(options.month), options.by, options.note};
  const auto store = context.open(store::OpenMode::existing);
  const auto work = store->begin_write(
      context.author(fmt::format("the books of {} were closed", desk::month_title(request.month))));
  const auto closed = desk::close_month(*work, request, today);
  if (!closed) throw WrongUse{closed.error().sentence};
  work->commit();
  const auto books = desk::compare_books(context.clinic_on(today), today);
  const int open = desk::open_until(books.items, request.month);
  if (context.json) {
    auto made = json_of(*closed);
    made["open_findings"] = open;
    print(made);
    return done;
  }
  std::cout << desk::close_words(closed->close) << '\n';
  print_lines(desk::total_lines(closed->entries));
  if (open > 0) std::cout << desk::still_open_words(open) << " See 'reconcile'.\n";
  return done;
}

int list(const Context& context) {
  const auto months = desk::closed_months(*context.open(store::OpenMode::existing)->read());
  if (context.json) {
    Json rows = Json::array();
    for (const auto& books : months) rows.push_back(json_of(books));
    print({{"today", batch::json_of(context.today())}, {"closes", std::move(rows)}});
    return done;
  }
  if (months.empty()) std::cout << "No month has been closed.\n";
  for (const auto& books : months) {
    std::cout << desk::close_words(books.close) << '\n';
    for (const auto& line : desk::total_lines(books.entries)) std::cout << "  " << line << '\n';
  }
  return done;
}

int changes(const Context& context, const Options& options) {
  const auto store = context.open(store::OpenMode::existing);
  const auto found = desk::changes_of_month(*store->read(), month_option(options.month));
  if (!found) throw WrongUse{found.error().sentence};
  const auto& since = found->since;
  const int status = since.changes.empty() ? done : done_with_findings;
  if (context.json) {
    auto made = json_of(found->close);
    made["changes"] = json_of(since.changes);
    made["sums"] = json_of(desk::sums_of(since.changes));
    made["revalued"] = json_of(since.revalued);
    print(made);
    return status;
  }
  std::cout << desk::close_words(found->close) << '\n';
  for (const auto& change : since.changes) std::cout << desk::change_words(change) << '\n';
  print_lines(desk::summary_lines(*found));
  return status;
}

}  // namespace

void add_month_end(Command& app, Context& context) {
  auto* command = app.add_subcommand("month-end", "Close a month of the books, and what changed");
  command->require_subcommand();
  command->fallthrough();
  const auto options = std::make_shared<Options>();
  auto* closing = command->add_subcommand("close", "Keep the records of a month as they are now");
  closing->add_option("--month", options->month, "The month, YYYY-MM")->required();
  closing->add_option("--by", options->by, "Who closes it")->required();
  closing->add_option("--note", options->note, "A remark to keep with it");
  closing->callback([&context, options] {
    context.run = [&context, options] { return close(context, *options); };
  });
  auto* listed = command->add_subcommand("list", "The months that were closed, with their totals");
  listed->callback([&context] { context.run = [&context] { return list(context); }; });
  auto* changed = command->add_subcommand("changes", "What has changed in a month since its close");
  changed->add_option("--month", options->month, "The month, YYYY-MM")->required();
  changed->callback([&context, options] {
    context.run = [&context, options] { return changes(context, *options); };
  });
}

}  // namespace sparewell::batch
