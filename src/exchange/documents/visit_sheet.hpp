/// Papers for the day's visits: a list of them, then one page for each patient.
#pragma once

#include <string>
#include <vector>

#include "clinic/refusal.hpp"
#include "exchange/documents/paper_size.hpp"

namespace sparewell::exchange {

struct VisitLine {
  std::string words;
  bool bold = false;
  bool stays = false;  ///< otherwise it may be left out, the last one first
};

struct VisitSection {
  std::string heading;
  std::vector<VisitLine> lines;
  int weight = 1;  ///< of several sections the lines of that with the highest go first
};

struct VisitPage {
  std::string title;  ///< the patient
  std::string below;  ///< such as the day
  std::vector<VisitSection> sections;
  std::string foot;
};

/// Everything in words, as it is printed.
struct VisitPapers {
  std::string clinic_name;
  std::string title;
  std::string summary;
  std::vector<std::string> columns;
  std::vector<double> shares;                  ///< of the width, for each column
  std::vector<std::vector<std::string>> rows;  ///< one for each visit
  std::vector<VisitPage> pages;
  std::string left_out;  ///< "And {} more, see the program."
  std::string notes;     ///< the heading of the ruled lines on each page
  std::vector<std::string> cautions;
  PaperSize paper = PaperSize::a4;
};

/// Writes a PDF and returns the number of its pages. Refuses with one sentence when the file cannot
/// be written, and then leaves none behind.
[[nodiscard]] Expected<int> write_visit_papers(const VisitPapers& papers, const std::string& path);

}  // namespace sparewell::exchange
