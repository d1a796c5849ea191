#include "desk/limb_drawing/chain_verdicts.hpp"

#include <algorithm>
#include <array>
#include <string_view>

#include "clinic/say.hpp"

namespace sparewell::desk {
namespace {

struct ShortWords {
  std::string_view key;
  Standing standing;
  const char* words;
};

/// By the keys of findings.
constexpr std::array known_words{
    ShortWords{"size_fits", Standing::good, to_say("size fits")},
    ShortWords{"measurement_old", Standing::not_known, to_say("size fitted, measured long ago")},
    ShortWords{"size_not_known", Standing::not_known, to_say("size not known to fit")},
    ShortWords{"size_at_edge", Standing::look, to_say("at the edge of the size")},
    ShortWords{"size_too_large", Standing::look, to_say("does not fit: too large")},
    ShortWords{"size_too_small", Standing::look, to_say("does not fit: too small")},
    ShortWords{"size_leaving", Standing::look, to_say("will leave the size soon")},
    ShortWords{"thread_differs", Standing::look, to_say("threads differ")},
    ShortWords{"thread_not_stated", Standing::not_known, to_say("thread not known")},
    ShortWords{"materials_meet", Standing::told, to_say("materials meet: look after")},
    ShortWords{"liner_not_for_suspension", Standing::look, to_say("liner not for this suspension")},
    ShortWords{"not_in_suspension", Standing::look, to_say("no work in this suspension")},
    ShortWords{"recalled", Standing::look, to_say("lot recalled")},
    ShortWords{"lot_in_quarantine", Standing::look, to_say("lot in quarantine elsewhere")},
    ShortWords{"none_known", Standing::told, to_say("no conflict known")}};

std::string conflict_words(const PatientFinding& finding) {
  const bool sure = finding.finding.key == "conflict";
  if (finding.decided) {
    return sure ? say("conflict, decided: {}", finding.substance)
                : say("possible conflict, decided: {}", finding.substance);
  }
  return sure ? say("conflict: {}", finding.substance)
              : say("possible conflict: {}", finding.substance);
}

ChainVerdict verdict_of(const PatientFinding& finding) {
  const auto& key = finding.finding.key;
  if (key == "conflict" || key == "possible_conflict") {
    const bool stops = finding.finding.gravity == care::Gravity::stops;
    return {stops ? Standing::stops : Standing::look, conflict_words(finding)};
  }
  if (key == "not_declared") {
    return {Standing::not_known, say("not declared: {}", finding.substance)};
  }
  for (const auto& each : known_words) {
    // A size by an old measurement may be wrong too; it is said by its own words.
    if (each.key == key) return {each.standing, said(each.words)};
  }
  const bool note = finding.finding.gravity == care::Gravity::note;
  return {note ? Standing::told : Standing::look,
          said(note ? to_say("note") : to_say("to be looked at"))};
}

bool is_of(const PatientFinding& finding, Side side, const ItemCode& item) {
  return finding.side == side && finding.item == item && !finding.missing;
}

}  // namespace

std::vector<ChainVerdict> chain_verdicts(const std::vector<PatientFinding>& findings, Side side,
                                         const ItemCode& item, bool known) {
  std::vector<ChainVerdict> made;
  if (!known) {
    made.push_back({Standing::not_known, say("not in the catalogue: nothing can be checked")});
  }
  for (const auto& finding : findings) {
    if (is_of(finding, side, item)) made.push_back(verdict_of(finding));
    const bool nothing = finding.topic == FindingTopic::sensitivity && !finding.side;
    if (nothing && known) {
      made.push_back({Standing::not_known, say("sensitivities not recorded")});
    }
  }
  std::ranges::stable_sort(made, std::ranges::greater{}, &ChainVerdict::standing);
  return made;
}

std::string finding_sentences(const std::vector<PatientFinding>& findings, Side side,
                              const ItemCode& item) {
  std::string text;
  for (const auto& finding : findings) {
    const bool nothing = finding.topic == FindingTopic::sensitivity && !finding.side;
    if (!is_of(finding, side, item) && !nothing) continue;
    text += fmt::format(" {}: {}", gravity_words(finding.finding.gravity), finding.finding.words);
  }
  return text;
}

}  // namespace sparewell::desk
