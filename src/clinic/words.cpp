#include "clinic/words.hpp"

namespace sparewell {
namespace {

using std::string_view;

constexpr std::array<string_view, 7> kinds{"liner", "sleeve", "lock", "pin",
                                           "valve", "pump",   "sock"};
constexpr std::array<string_view, 4> attachments{"locking", "cushion", "seal", "none"};
constexpr std::array<string_view, 7> materials{"silicone", "mineral-oil gel", "urethane", "neoprene",
                                               "fabric",   "metal",           "other"};
constexpr std::array<string_view, 2> sides{"left", "right"};
constexpr std::array<string_view, 7> levels{"transtibial",           "transfemoral",
                                            "ankle disarticulation", "knee disarticulation",
                                            "transradial",           "transhumeral",
                                            "other"};
constexpr std::array<string_view, 7> suspensions{"pin",    "lanyard",    "sleeve", "suction",
                                                 "vacuum", "anatomical", "belt"};
constexpr std::array<string_view, 2> stages{"preparatory", "definitive"};
constexpr std::array<string_view, 5> activities{"K0", "K1", "K2", "K3", "K4"};
constexpr std::array<string_view, 3> sweatings{"low", "normal", "high"};
constexpr std::array<string_view, 15> end_reasons{
    "hole",    "tear",     "stretched", "delaminated", "lost grip", "leak",     "worn", "lost",
    "resized", "reaction", "recall",    "upgrade",     "returned",  "deceased", "other"};

char folded(char c) {
  if (c >= 'A' && c <= 'Z') return static_cast<char>(c - 'A' + 'a');
  if (c == '-' || c == '_') return ' ';
  return c;
}

}  // namespace

bool is_wear(EndReason reason) { return reason <= EndReason::worn; }

bool same_word(string_view a, string_view b) {
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (folded(a[i]) != folded(b[i])) return false;
  }
  return true;
}

template <>
std::span<const string_view> words<Kind>() { return kinds; }
template <>
std::span<const string_view> words<Attachment>() { return attachments; }
template <>
std::span<const string_view> words<Material>() { return materials; }
template <>
std::span<const string_view> words<Side>() { return sides; }
template <>
std::span<const string_view> words<Level>() { return levels; }
template <>
std::span<const string_view> words<Suspension>() { return suspensions; }
template <>
std::span<const string_view> words<Stage>() { return stages; }
template <>
std::span<const string_view> words<Activity>() { return activities; }
template <>
std::span<const string_view> words<Sweating>() { return sweatings; }
template <>
std::span<const string_view> words<EndReason>() { return end_reasons; }

}  // namespace sparewell
