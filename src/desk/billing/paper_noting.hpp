/// Putting a paper of a part on record: the order, the reason of a replacement, its condition ...
#pragma once

#include <string>

#include "desk/day.hpp"
#include "desk/stock_form.hpp"

namespace sparewell::desk {

/// Names the part as people do; what is "" or empty is not asked. All alike parts of one issue get
/// the paper.
struct PaperRequest {
  std::string patient;
  std::optional<Side> side;
  std::string item;
  std::string lot;
  std::string serial;
  std::optional<Date> issued_on;
  std::string paper;
  Date dated_on;
  std::string words;
  std::string by;
};

/// Refuses, writing nothing: a part that was never handed out, a request that names parts of
/// several issues, no paper, a day after today, a paper that is on record already.
[[nodiscard]] Expected<std::vector<PartPaper>> note_paper(store::UnitOfWork& work,
                                                          const PaperRequest& request, Date today);

/// "P-0012, left, LS10-24 issued 3 Nov 2026: reason of 3 Nov 2026, torn at the trim line (Anna)."
[[nodiscard]] std::string paper_words(const PartPaper& paper);

/// The papers that payers ask for, as they are recorded.
[[nodiscard]] std::vector<std::string> usual_papers();
/// A recorded paper's name in the language of the program; one that is not usual stays as it is.
[[nodiscard]] std::string shown_paper(const std::string& paper);
/// The other way round, for what a person chose or typed.
[[nodiscard]] std::string paper_meant(const std::string& shown);

/// The questions that the window asks about a paper of the unit.
[[nodiscard]] StockForm paper_form(const Day& day, const Unit& unit, const std::string& paper);

}  // namespace sparewell::desk
