#include "clinic/words.hpp"

namespace sparewell {
namespace {

using std::string_view;

constexpr std::array<string_view, 7> kinds{to_say("liner"), to_say("sleeve"), to_say("lock"),
                                           to_say("pin"),   to_say("valve"),  to_say("pump"),
                                           to_say("sock")};
constexpr std::array<string_view, 4> attachments{to_say("locking"), to_say("cushion"),
                                                 to_say("seal"), to_say("none")};
constexpr std::array<string_view, 7> materials{
    to_say("silicone"), to_say("mineral-oil gel"), to_say("urethane"), to_say("neoprene"),
    to_say("fabric"),   to_say("metal"),           to_say("other")};
constexpr std::array<string_view, 2> sides{to_say("left"), to_say("right")};
constexpr std::array<string_view, 7> levels{to_say("transtibial"),
                                            to_say("transfemoral"),
                                            to_say("ankle disarticulation"),
                                            to_say("knee disarticulation"),
                                            to_say("transradial"),
                                            to_say("transhumeral"),
                                            to_say("other")};
constexpr std::array<string_view, 7> suspensions{
    to_say("pin"),    to_say("lanyard"),    to_say("sleeve"), to_say("suction"),
    to_say("vacuum"), to_say("anatomical"), to_say("belt")};
constexpr std::array<string_view, 2> stages{to_say("preparatory"), to_say("definitive")};
constexpr std::array<string_view, 5> activities{"K0", "K1", "K2", "K3", "K4"};
constexpr std::array<string_view, 3> sweatings{to_say("low"), to_say("normal"), to_say("high")};
constexpr std::array<string_view, 15> end_reasons{
    to_say("hole"),      to_say("tear"),     to_say("stretched"), to_say("delaminated"),
    to_say("lost grip"), to_say("leak"),     to_say("worn"),      to_say("lost"),
    to_say("resized"),   to_say("reaction"), to_say("recall"),    to_say("upgrade"),
    to_say("returned"),  to_say("deceased"), to_say("other")};

char folded(char c) {
  if (c >= 'A' && c <= 'Z') return static_cast<char>(c - 'A' + 'a');
  if (c == '-' || c == '_') return ' ';
  return c;
}

}  // namespace

bool is_wear(EndReason reason) {
  return reason <= EndReason::worn;
}

bool same_word(string_view a, string_view b) {
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (folded(a[i]) != folded(b[i])) return false;
  }
  return true;
}

template <>
std::span<const string_view> words<Kind>() {
  return kinds;
}
template <>
std::span<const string_view> words<Attachment>() {
  return attachments;
}
template <>
std::span<const string_view> words<Material>() {
  return materials;
}
template <>
std::span<const string_view> words<Side>() {
  return sides;
}
template <>
std::span<const string_view> words<Level>() {
  return levels;
}
template <>
std::span<const string_view> words<Suspension>() {
  return suspensions;
}
template <>
std::span<const string_view> words<Stage>() {
  return stages;
}
template <>
std::span<const string_view> words<Activity>() {
  return activities;
}
template <>
std::span<const string_view> words<Sweating>() {
  return sweatings;
}
template <>
std::span<const string_view> words<EndReason>() {
  return end_reasons;
}

}  // namespace sparewell
