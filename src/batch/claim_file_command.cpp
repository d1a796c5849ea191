#include <iostream>

#include "batch/context.hpp"
#include "batch/json.hpp"
#include "desk/billing/claim_file_words.hpp"
#include "exchange/mapped_table.hpp"

namespace sparewell::batch {
namespace {

struct Options {
  desk::BillingFileRequest request;
  std::string file;
  std::string separator = ",";
};

void print_json(const desk::BillingFileOutcome& outcome) {
  Json refused = Json::array();
  for (const auto& row : outcome.refused) {
    refused.push_back({{"line", row.line}, {"column", row.column}, {"reason", row.reason}});
  }
  Json unread = Json::array();
  for (const auto& segment : outcome.unread) {
    unread.push_back(
        {{"segment", segment.segment}, {"text", segment.text}, {"reason", segment.reason}});
  }
  const bool claims = outcome.kind == desk::BillingFileKind::claims;
  print({{"file", outcome.file},
         {"form", outcome.is_x12 ? "X12" : "table"},
         {claims ? "claims" : "payments", outcome.claims},
         {"added", outcome.added},
         {"changed", outcome.changed},
         {"unchanged", outcome.unchanged},
         {"without_patient", outcome.without_patient},
         {"currency", outcome.stated.currency.code},
         {"stated", outcome.stated.major()},
         {"kept", outcome.kept.major()},
         {"refused_amount", outcome.refused_sum.major()},
         {"ties_out", outcome.ties_out()},
         {"refused", std::move(refused)},
         {"unread", std::move(unread)},
         {"differences", outcome.differences},
         {"notes", outcome.notes},
         {"rejects_folder", outcome.rejects_folder.string()},
         {"columns", outcome.mapping ? Json(outcome.mapping->columns) : Json(nullptr)},
         {"written", outcome.written}});
}

int run(const Context& context, Options& options) {
  auto& request = options.request;
  request.file = options.file;
  request.separator = options.separator == "tab" ? '\t' : options.separator.front();
  const auto store = context.open(store::OpenMode::existing);
  const auto outcome = desk::read_billing_file(
      *store, request, context.author("reading of the file " + request.file.filename().string()));
  if (!outcome) throw WrongUse{outcome.error().sentence};
  if (context.json) {
    print_json(*outcome);
  } else {
    for (const auto& line : desk::claim_file_lines(*outcome)) std::cout << line << '\n';
    for (const auto& line : desk::claim_file_problems(*outcome)) std::cerr << line << '\n';
  }
  return outcome->clean() ? done : done_with_findings;
}

void add(Command& app, Context& context, desk::BillingFileKind kind, const std::string& name,
         const std::string& help, const std::string& file_help) {
  auto* command = app.add_subcommand(name, help);
  const auto options = std::make_shared<Options>();
  auto& request = options->request;
  request.kind = kind;
  command->add_option("file", options->file, file_help)->required();
  command->add_option("--mapping", request.mapping, "The saved mapping by which a table is read");
  command->add_option("--map", request.columns,
                      "The columns of a table: \"FIELD=COLUMN;...\"; \"FIELD=\"\"words\"\"\" for "
                      "what stands in no column");
  command->add_option("--save-mapping", request.save_as, "Keep --map under this name");
  command->add_option("--dates", request.date_pattern,
                      "How a table writes dates, such as MM/DD/YYYY (default: YYYY-MM-DD)");
  command->add_option("--decimal-sign", request.decimal_sign, "Of text in a table: . or ,")
      ->one_of({".", ","});
  command->add_option("--separator", options->separator, "Of CSV: , or ; or tab")
      ->one_of({",", ";", "tab"});
  command->add_option("--sheet", request.sheet, "The workbook's sheet (default: the first)");
  command->add_flag("--dry-run", request.dry_run, "Say what would be done, and write nothing");
  command->callback([&context, options] {
    context.run = [&context, options] { return run(context, *options); };
  });
}

}  // namespace

void add_claim_file(Command& app, Context& context) {
  add(app, context, desk::BillingFileKind::claims, "claim-file",
      "Read claims that were sent to payers, from X12 837P or a table", "X12 837P, CSV or .xlsx");
}

void add_remittance(Command& app, Context& context) {
  add(app, context, desk::BillingFileKind::remittance, "remittance",
      "Read what payers answered and paid, from X12 835 or a table", "X12 835, CSV or .xlsx");
}

}  // namespace sparewell::batch
