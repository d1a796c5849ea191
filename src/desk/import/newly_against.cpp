#include "desk/import/newly_against.hpp"

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/sensitivity_work.hpp"
#include "desk/substance_table.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

constexpr std::size_t most_named = 10;

std::vector<care::Examined> examined(const Clinic& clinic, Date today) {
  return care::examine(clinic, *substances_of(clinic, today), today);
}

}  // namespace

NewlyAgainst::NewlyAgainst(store::Store& store, Date today) : store_{store}, today_{today} {
  const auto clinic = read_for_examination(*store_.read());
  examined_ = !clinic.patients.empty();
  if (examined_) before_ = examined(clinic, today_);
}

std::optional<std::string> NewlyAgainst::words() const {
  if (!examined_) return std::nullopt;
  const auto newly =
      care::newly_against(before_, examined(read_for_examination(*store_.read()), today_));
  if (newly.empty()) return std::nullopt;
  std::vector<std::string> named;
  for (const auto& each : newly) {
    if (named.size() == most_named) break;
    named.push_back(say("{} and {} ({}, {})", each.now.patient.text, each.now.item.text,
                        shown_word(each.now.verdict.verdict), each.now.verdict.recorded.substance));
  }
  const auto more = newly.size() - named.size();
  return say(
      "By this import {} newly against a recorded sensitivity: {}{}; look at the "
      "findings of everyone.",
      count_words(static_cast<int>(newly.size()), "part is", "parts are"), fmt::join(named, "; "),
      more > 0 ? say("; and {} more", more) : "");
}

}  // namespace sparewell::desk
