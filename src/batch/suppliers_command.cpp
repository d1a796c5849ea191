#include <iostream>

#include <fmt/format.h>

#include "batch/context.hpp"
#include "batch/json.hpp"
#include "desk/supplier_words.hpp"

namespace sparewell::batch {
namespace {

Json json_of(const supply::SupplierRecord& record) {
  return {{"supplier", record.supplier.text},
          {"receipts", record.receipts},
          {"quoted_days", record.quoted_days},
          {"taken_days", record.taken_days},
          {"late", record.late},
          {"nine_in_ten_days_late", record.nine_in_ten_days_late},
          {"open_lines", record.open_lines},
          {"overdue_lines", record.overdue_lines},
          {"runs_late", record.runs_late}};
}

int run(const Context& context) {
  const Date today = context.today();
  const auto records = supply::supplier_records(context.clinic_on(today), today);
  const bool late = std::ranges::any_of(records, &supply::SupplierRecord::runs_late);
  if (context.json) {
    Json made = Json::array();
    for (const auto& record : records) made.push_back(json_of(record));
    print({{"today", batch::json_of(today)}, {"suppliers", std::move(made)}});
  } else {
    for (const auto& record : records) {
      std::cout << fmt::format("{}: {}\n", record.supplier.text, desk::supplier_words(record));
    }
  }
  return late ? done_with_findings : done;
}

}  // namespace

void add_suppliers(Command& app, Context& context) {
  auto* command = app.add_subcommand("suppliers", "How suppliers keep the days that they quote");
  command->callback([&context] { context.run = [&context] { return run(context); }; });
}

}  // namespace sparewell::batch
