/// The papers for a day's visits: what stands on them, and writing them.
#pragma once

#include <string>

#include "desk/visit_sheet.hpp"
#include "exchange/documents/visit_sheet.hpp"

namespace sparewell::desk {

struct VisitPaper {
  exchange::PaperSize paper = exchange::PaperSize::a4;
  bool names = true;  ///< patients' names beside the references
};

[[nodiscard]] exchange::VisitPapers visit_papers(const Day& day, const VisitDay& visits,
                                                 const VisitPaper& how);

/// Writes a list of the day's visits and a page for each, and returns the number of pages; 0, and
/// no file, when nobody is expected.
[[nodiscard]] Expected<int> print_visits(const Day& day, const VisitDay& visits,
                                         const VisitPaper& how, const std::string& path);

/// "No visit is known for Fri 27 Nov 2026; the next is on Mon 7 Dec 2026."
[[nodiscard]] std::string no_visit_words(const Day& day, Date on);
/// "3 visits; 2 findings to act on; 1 piece for the bench is not on the shelf."
[[nodiscard]] std::string visits_summary(const VisitDay& visits);

}  // namespace sparewell::desk
