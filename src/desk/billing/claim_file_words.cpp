#include "desk/billing/claim_file_words.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/wording.hpp"
#include "exchange/mapped_table.hpp"

namespace sparewell::desk {
namespace {

std::string counted(const BillingFileOutcome& outcome) {
  const bool claims = outcome.kind == BillingFileKind::claims;
  const auto files =
      count_words(outcome.claims, claims ? "claim" : "payment", claims ? "claims" : "payments");
  const auto refused = static_cast<long long>(outcome.refused.size());
  return say("{}: {}; {} added, {} changed, {} stored already, {} refused.", outcome.file, files,
             count_words(outcome.added, "line", "lines"), number_words(outcome.changed),
             number_words(outcome.unchanged), number_words(refused));
}

std::string tie(const BillingFileOutcome& outcome) {
  if (outcome.ties_out()) {
    return say("It ties out: {} stated, {} kept, {} refused.", amount_words(outcome.stated),
               amount_words(outcome.kept), amount_words(outcome.refused_sum));
  }
  const Money open{outcome.stated.minor - outcome.kept.minor - outcome.refused_sum.minor,
                   outcome.stated.currency};
  return say("It does not tie out: {} stated, {} kept, {} refused; {} differ.",
             amount_words(outcome.stated), amount_words(outcome.kept),
             amount_words(outcome.refused_sum), amount_words(open));
}

template <class Each, class Line>
void add_some(const std::vector<Each>& all, std::size_t most, const std::string& what,
              std::vector<std::string>& lines, Line line) {
  for (std::size_t i = 0; i < std::min(most, all.size()); ++i) lines.push_back(line(all[i]));
  if (all.size() > most) {
    lines.push_back(
        say("and {} more {}", number_words(static_cast<long long>(all.size() - most)), what));
  }
}

}  // namespace

std::vector<std::string> claim_file_lines(const BillingFileOutcome& outcome) {
  std::vector<std::string> lines{counted(outcome), tie(outcome)};
  if (outcome.without_patient > 0) {
    lines.push_back(say(
        "Of {} the patient is not known; they are kept, and filled in when the file is read again.",
        count_words(outcome.without_patient, "line", "lines")));
  }
  if (outcome.mapping) {
    lines.push_back(
        say("It was read by these columns: {}.", exchange::mapping_text(*outcome.mapping)));
  }
  constexpr std::size_t most_notes = 20;
  add_some(outcome.notes, most_notes, "notes", lines, [](const std::string& note) { return note; });
  if (!outcome.rejects_folder.empty()) {
    lines.push_back(say("Refused lines are in {}: correct the file there and read it in.",
                        outcome.rejects_folder.string()));
  }
  if (!outcome.written) lines.emplace_back(said("Nothing was written: this was a dry run."));
  return lines;
}

std::vector<std::string> claim_file_problems(const BillingFileOutcome& outcome, std::size_t most) {
  const auto* place = outcome.is_x12 ? "segment" : "line";
  std::vector<std::string> lines;
  add_some(outcome.refused, most, "refused", lines, [&](const RefusedRow& row) {
    return fmt::format("{}, {} {}{}: {}", row.file, place, row.line,
                       row.column.empty() ? "" : fmt::format(", {}", row.column), row.reason);
  });
  add_some(outcome.unread, most, said("segments not understood"), lines,
           [&](const exchange::Unread& unread) {
             return say("{}, segment {}, {}: {}", outcome.file, unread.segment, unread.text,
                        unread.reason);
           });
  add_some(outcome.differences, most, "differences", lines,
           [](const std::string& difference) { return difference; });
  return lines;
}

}  // namespace sparewell::desk
