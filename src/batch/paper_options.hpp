/// The options that papers for patients have in common.
#pragma once

#include <memory>
#include <string>

#include "batch/command_line.hpp"
#include "desk/papers/paper_parts.hpp"

namespace sparewell::batch {

struct PaperOptions {
  std::vector<std::string> languages;
  std::string paper = "a4";
  bool no_name = false;

  [[nodiscard]] desk::PatientPaper how() const;
  [[nodiscard]] exchange::PaperSize size() const;
};

/// `options` must outlive the command line.
void add_languages(Command& command, PaperOptions& options);
void add_paper(Command& command, PaperOptions& options);

}  // namespace sparewell::batch
