#include "desk/billing/billing_jobs.hpp"

#include <algorithm>
#include <fstream>
#include <map>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/billing/books.hpp"
#include "desk/billing/month_words.hpp"
#include "desk/billing/table_mapping.hpp"
#include "desk/stock_form.hpp"
#include "desk/wording.hpp"
#include "exchange/x12/segments.hpp"

namespace sparewell::desk {
namespace {

WorklistPtr shared(std::vector<billing::WorkItem> items) {
  return std::make_shared<const std::vector<billing::WorkItem>>(std::move(items));
}

/// The last closing of each month, the newest month first.
std::map<Date, MonthClose, std::greater<>> last_closings(const store::Snapshot& snapshot) {
  std::map<Date, MonthClose, std::greater<>> last;
  for (const auto& row : snapshot.all<MonthClose>()) {
    auto& close = last[row.record.month];
    if (row.record.number >= close.number) close = row.record;
  }
  return last;
}

}  // namespace

WorklistPtr compare_books_of(const Day& day) {
  return shared(compare_books(day.clinic(), day.today()).items);
}

WorklistPtr with_answers(const ClinicFile& file, const WorklistPtr& items) {
  const auto snapshot_of = open_store(file);
  const auto snapshot = snapshot_of->read();
  std::vector<BillingAnswer> answers;
  for (auto& row : snapshot->all<BillingAnswer>()) answers.push_back(std::move(row.record));
  std::vector<billing::BillingFinding> findings;
  findings.reserve(items->size());
  for (const auto& item : *items) findings.push_back(item.finding);
  return shared(billing::make_worklist(std::move(findings), answers, file.today));
}

bool is_x12_file(const std::filesystem::path& file) {
  std::ifstream in{file, std::ios::binary};
  std::string begin(256, '\0');
  in.read(begin.data(), static_cast<std::streamsize>(begin.size()));
  begin.resize(static_cast<std::size_t>(in.gcount()));
  return exchange::looks_like_x12(begin);
}

std::vector<std::string> saved_mappings(const ClinicFile& file, BillingFileKind kind) {
  const auto store = open_store(file);
  std::vector<std::string> names;
  for (const auto& row : store->read()->all<ColumnMapping>()) {
    if (row.record.target == target_of(kind)) names.push_back(row.record.name);
  }
  return names;
}

Expected<BillingFileOutcome> read_into(const ClinicFile& file, const BillingFileRequest& request) {
  const auto store = open_store(file);
  return read_billing_file(
      *store, request,
      {file.who, fmt::format("reading of the file {}", request.file.filename().string())});
}

std::vector<Date> months_to_close(const Clinic& clinic, Date today) {
  std::vector<Date> months;
  const auto add = [&](Date day) {
    if (billing::month_after(billing::month_of(day)) <= today) {
      months.push_back(billing::month_of(day));
    }
  };
  for (const Unit& unit : clinic.units) add(unit.issued_on);
  for (const ClaimLine& line : clinic.claim_lines) add(line.service_date);
  for (const InvoiceLine& line : clinic.invoice_lines) {
    if (line.invoiced_on) add(*line.invoiced_on);
  }
  std::ranges::sort(months, std::ranges::greater{});
  const auto rest = std::ranges::unique(months);
  months.erase(rest.begin(), rest.end());
  return months;
}

StockForm close_form(const Day& day, const WorklistPtr& items) {
  StockForm form{said("Close a month"),    {}, {},
                 said("&Close the month"), {}, to_say("a month was closed")};
  form.intro = said(
      "Keeps the records of a month as they are: parts, claim lines, suppliers' invoices, receipts "
      "and payments. Nothing is locked; what changes afterwards is told. A month that has changed "
      "can be closed again.");
  std::vector<std::string> choices;
  for (const Date month : months_to_close(day.clinic(), day.today())) {
    choices.push_back(month_key(month));
  }
  const auto newest = choices.empty() ? std::string{} : choices.front();
  form.fields = {{said("&Month"), newest, said("A month that is over"), choices, true},
                 {said("Closed &by"), "", said("Who closes it")},
                 {said("&Note"), "", said("Anything to be remembered; may be empty")}};
  form.book = [items, today = day.today()](
                  store::UnitOfWork& work,
                  const std::vector<std::string>& given) -> Expected<Booked> {
    const auto month = parse_month(given[0]);
    if (!month) return refuse(say("Choose a month; there is none that is over."));
    const auto closed = close_month(work, {*month, given[1], given[2]}, today);
    if (!closed) return tl::unexpected(closed.error());
    Booked booked;
    booked.notes.push_back(close_words(closed->close));
    for (auto& line : total_lines(closed->entries)) booked.notes.push_back(std::move(line));
    if (items) {
      if (auto words = still_open_words(open_until(*items, *month)); !words.empty()) {
        booked.notes.push_back(std::move(words));
      }
    }
    return booked;
  };
  return form;
}

std::vector<std::string> changes_since_closing(const ClinicFile& file) {
  const auto store = open_store(file);
  const auto snapshot = store->read();
  std::vector<std::string> lines;
  for (const auto& [month, close] : last_closings(*snapshot)) {
    const auto changes = changes_of_month(*snapshot, month);
    if (!changes) continue;
    lines.push_back(close_words(changes->close));
    for (const auto& line : summary_lines(*changes)) lines.push_back(fmt::format("  {}", line));
    for (const auto& change : changes->since.changes) {
      lines.push_back(fmt::format("  {}", change_words(change)));
    }
  }
  if (lines.empty()) lines.emplace_back(said("No month has been closed yet."));
  return lines;
}

}  // namespace sparewell::desk
