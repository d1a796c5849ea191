#include <iostream>

#include <fmt/format.h>

#include "batch/context.hpp"
#include "batch/json.hpp"
#include "desk/import_folder.hpp"
#include "desk/import_trial.hpp"

namespace sparewell::batch {
namespace {

struct Options {
  std::string folder;
  std::string rejects;
  std::string separator = ",";
  std::string decimal_sign = ".";
  std::string dates = "YYYY-MM-DD";
  bool dry_run = false;
};

char one_character(const std::string& name, const std::string& text, const std::string& allowed) {
  char sign = text.size() == 1 ? text[0] : '\0';
  if (text == "tab" || text == "\\t") sign = '\t';
  if (allowed.find(sign) == std::string::npos) {
    throw WrongUse{
        fmt::format("{} takes one of: comma, semicolon or tab for --separator, '.' or "
                    "',' for --decimal-sign.",
                    name)};
  }
  return sign;
}

exchange::FolderFormat format_of(const Options& options) {
  exchange::FolderFormat format;
  format.separator = one_character("--separator", options.separator, ",;\t");
  format.decimal_sign = one_character("--decimal-sign", options.decimal_sign, ".,");
  auto pattern = DatePattern::from_text(options.dates);
  if (!pattern) throw WrongUse{pattern.error().sentence};
  format.dates = *pattern;
  return format;
}

Json json_of(const desk::ImportReport& report) {
  Json files = Json::array();
  for (const auto& file : report.files) {
    files.push_back({{"file", file.file},
                     {"rows", file.rows},
                     {"added", file.added},
                     {"changed", file.changed},
                     {"unchanged", file.unchanged},
                     {"refused", file.refused},
                     {"refusal", file.refusal.empty() ? Json(nullptr) : Json(file.refusal)},
                     {"notes", file.notes}});
  }
  Json refused = Json::array();
  for (const auto& row : report.refused) {
    refused.push_back(
        {{"file", row.file}, {"line", row.line}, {"column", row.column}, {"reason", row.reason}});
  }
  return {{"files", files},
          {"refused", refused},
          {"rejects_folder", report.rejects_folder.string()},
          {"notes", report.notes}};
}

void print_words(const desk::ImportReport& report) {
  for (const auto& file : report.files) {
    if (!file.refusal.empty()) {
      std::cerr << file.refusal << '\n';
      continue;
    }
    std::cout << fmt::format("{}: {} rows, {} added, {} changed, {} unchanged, {} refused\n",
                             file.file, file.rows, file.added, file.changed, file.unchanged,
                             file.refused);
    for (const auto& note : file.notes) std::cout << "  " << note << '\n';
  }
  for (const auto& note : report.notes) std::cout << note << '\n';
  constexpr std::size_t most_shown = 20;
  for (std::size_t i = 0; i < report.refused.size() && i < most_shown; ++i) {
    const auto& row = report.refused[i];
    std::cerr << fmt::format("{}, line {}{}: {}\n", row.file, row.line,
                             row.column.empty() ? "" : ", " + row.column, row.reason);
  }
  if (report.refused.size() > most_shown) {
    std::cerr << fmt::format("and {} more\n", report.refused.size() - most_shown);
  }
  if (!report.rejects_folder.empty()) {
    std::cout << fmt::format("Refused rows are in {}: correct them there and import that folder.\n",
                             report.rejects_folder.string());
  }
}

int dry_run(const Context& context, const Options& options) {
  const auto trial = desk::try_folder({context.db, context.today(), ""}, options.folder,
                                      format_of(options), {[](const desk::JobProgress&) {}, {}});
  if (context.json) {
    auto printed = json_of(trial.report);
    printed["dry_run"] = true;
    printed["missing"] = trial.missing;
    print(printed);
  } else {
    std::cout << "Dry run: nothing is imported. It would be:\n";
    print_words(trial.report);
    for (const auto& sentence : trial.missing) std::cout << "Missing: " << sentence << '\n';
  }
  return trial.report.clean() ? done : done_with_findings;
}

int run(const Context& context, const Options& options) {
  desk::ImportOptions import;
  import.format = format_of(options);
  import.today = context.today();
  import.rejects_folder = options.rejects;
  if (!std::filesystem::is_directory(options.folder)) {
    throw WrongUse{
        fmt::format("There is no folder '{}' to import; check its name.", options.folder)};
  }
  if (options.dry_run) return dry_run(context, options);
  const auto store = context.open(store::OpenMode::create);
  const auto report = desk::import_folder(
      *store, options.folder, context.author("import of the folder " + options.folder), import);
  if (context.json) {
    print(json_of(report));
  } else {
    print_words(report);
  }
  return report.clean() ? done : done_with_findings;
}

}  // namespace

void add_import(Command& app, Context& context) {
  auto* command = app.add_subcommand("import", "Bring a folder of the clinic's CSV files in");
  const auto options = std::make_shared<Options>();
  command->add_option("folder", options->folder, "The folder")->required();
  command->add_option("--rejects", options->rejects, "Folder for refused rows (default: rejects)");
  command->add_option("--separator", options->separator, "Between cells: ',' or ';' or tab");
  command->add_option("--decimal-sign", options->decimal_sign, "In numbers: '.' or ','");
  command->add_option("--dates", options->dates, "How dates are written, such as DD.MM.YYYY");
  command->add_flag("--dry-run", options->dry_run,
                    "Say what would be imported, refused and missing; write nothing");
  command->callback([&context, options] {
    context.run = [&context, options] { return run(context, *options); };
  });
}

}  // namespace sparewell::batch
