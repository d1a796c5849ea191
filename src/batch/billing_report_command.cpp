#include <iostream>

#include <fmt/format.h>

#include "batch/context.hpp"
#include "batch/json.hpp"
#include "desk/billing/reports.hpp"
#include "desk/wording.hpp"

namespace sparewell::batch {
namespace {

int write_reports(const Context& context, const std::string& folder) {
  const Date today = context.today();
  const auto clinic = context.clinic_on(today);
  const auto books = desk::compare_books(clinic, today);
  Json files = Json::array();
  for (const auto& report : desk::write_billing_reports(clinic, books, today, folder)) {
    files.push_back(
        {{"report", report.title}, {"file", report.file.string()}, {"rows", report.rows}});
    if (context.json) continue;
    std::cout << fmt::format("{}: {}, written to {}.\n", report.title,
                             desk::count_words(static_cast<long long>(report.rows), "row", "rows"),
                             report.file.string());
  }
  if (context.json) print({{"today", json_of(today)}, {"files", std::move(files)}});
  return done;
}

}  // namespace

void add_billing_reports(Command& app, Context& context) {
  auto* command = app.add_subcommand(
      "billing-reports",
      "Write what is unbilled, all findings, margins and supplier variances as workbooks");
  const auto folder = std::make_shared<std::string>();
  command->add_option("--out", *folder, "The folder to write into")->required();
  command->callback([&context, folder] {
    context.run = [&context, folder] { return write_reports(context, *folder); };
  });
}

}  // namespace sparewell::batch
