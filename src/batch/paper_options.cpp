#include "batch/paper_options.hpp"

#include <fmt/format.h>

namespace sparewell::batch {

exchange::PaperSize PaperOptions::size() const {
  return paper == "letter" ? exchange::PaperSize::letter : exchange::PaperSize::a4;
}

desk::PatientPaper PaperOptions::how() const {
  return {languages, size(), !no_name};
}

void add_languages(Command& command, PaperOptions& options) {
  std::vector<std::string> codes;
  for (const auto& language : desk::paper_languages()) codes.push_back(language.code());
  command
      .add_option("--language", options.languages,
                  fmt::format("Of the paper: {} (default: en); once for each language",
                              fmt::join(codes, ", ")))
      ->repeatable();
}

void add_paper(Command& command, PaperOptions& options) {
  command.add_option("--paper", options.paper, "a4 or letter (default: a4)")
      ->one_of({"a4", "letter"});
  command.add_flag("--without-name", options.no_name, "Leave patients' names off the paper");
}

}  // namespace sparewell::batch
