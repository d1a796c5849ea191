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
  const auto files = claims ? count_words(outcome.claims, "claim", "claims")
                            : count_words(outcome.claims, "payment", "payments");
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

/// `more` says how many are left out.
template <class Each, class Line, class More>
void add_some(const std::vector<Each>& all, std::size_t most, std::vector<std::string>& lines,
              Line line, More more) {
  for (std::size_t i = 0; i < std::min(most, all.size()); ++i) lines.push_back(line(all[i]));
  if (all.size() > most) {
    lines.push_back(more(number_words(static_cast<long long>(all.size() - most))));
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
  add_some(
      outcome.notes, most_notes, lines, [](const std::string& note) { return note; },
      [](const std::string& count) { return say("and {} more notes", count); });
  if (!outcome.rejects_folder.empty()) {
    lines.push_back(say("Refused lines are in {}: correct the file there and read it in.",
                        outcome.rejects_folder.string()));
  }
  if (!outcome.written) lines.emplace_back(said("Nothing was written: this was a dry run."));
  return lines;
}

std::vector<std::string> claim_file_problems(const BillingFileOutcome& outcome, std::size_t most) {
  std::vector<std::string> lines;
  add_some(
      outcome.refused, most, lines,
      [&](const RefusedRow& row) {
        const auto column = row.column.empty() ? "" : fmt::format(", {}", row.column);
        return outcome.is_x12 ? say("{}, segment {}{}: {}", row.file, row.line, column, row.reason)
                              : say("{}, line {}{}: {}", row.file, row.line, column, row.reason);
      },
      [](const std::string& count) { return say("and {} more refused", count); });
  add_some(
      outcome.unread, most, lines,
      [&](const exchange::Unread& unread) {
        return say("{}, segment {}, {}: {}", outcome.file, unread.segment, unread.text,
                   unread.reason);
      },
      [](const std::string& count) { return say("and {} more segments not understood", count); });
  add_some(
      outcome.differences, most, lines, [](const std::string& difference) { return difference; },
      [](const std::string& count) { return say("and {} more differences", count); });
  return lines;
}

}  // namespace sparewell::desk
