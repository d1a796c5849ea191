#include "care/sock_history.hpp"

#include <cctype>

#include "care/fit.hpp"

namespace sparewell::care {
namespace {

constexpr int most_plies = 20;
constexpr int least_socks = 2;

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

bool is_letter(char c) {
  return std::isalpha(static_cast<unsigned char>(c)) != 0;
}

bool says_ply(std::string_view text) {
  const auto lower = [](char c) { return std::tolower(static_cast<unsigned char>(c)); };
  return text.size() >= 3 && lower(text[0]) == 'p' && lower(text[1]) == 'l' &&
         lower(text[2]) == 'y' && (text.size() == 3 || !is_letter(text[3]));
}

/// The number that ends where the text ends, a space or hyphen behind it left out; 0 when none.
int number_at_end(std::string_view text) {
  if (!text.empty() && (text.back() == ' ' || text.back() == '-')) text.remove_suffix(1);
  std::size_t from = text.size();
  while (from > 0 && is_digit(text[from - 1])) --from;
  const auto digits = text.substr(from);
  if (digits.empty() || digits.size() > 2) return 0;
  if (from > 0 && (text[from - 1] == '.' || text[from - 1] == ',')) return 0;
  int number = 0;
  for (const char digit : digits) number = 10 * number + (digit - '0');
  return number;
}

}  // namespace

std::optional<int> ply_of(const Item& item) {
  if (item.kind != Kind::sock) return std::nullopt;
  const std::string_view text = item.description;
  std::optional<int> found;
  for (std::size_t at = 1; at < text.size(); ++at) {
    if (!says_ply(text.substr(at))) continue;
    const int number = number_at_end(text.substr(0, at));
    if (number < 1 || number > most_plies) continue;
    if (found && *found != number) return std::nullopt;
    found = number;
  }
  return found;
}

std::optional<SockSign> sock_sign(const std::vector<const Unit*>& units_of_side,
                                  const ClinicIndex& index, Date day) {
  SockSign made;
  for (const Unit* unit : units_of_side) {
    const Item* item = index.item(unit->item);
    const auto plies = item == nullptr ? std::nullopt : ply_of(*item);
    if (!plies || unit->issued_on > day) continue;
    const bool before = is_old_measurement(unit->issued_on, day);
    (before ? made.plies_before : made.plies_lately) += *plies;
    (before ? made.socks_before : made.socks_lately) += 1;
  }
  if (made.socks_before < least_socks || made.socks_lately < least_socks) return std::nullopt;
  made.plies_before /= made.socks_before;
  made.plies_lately /= made.socks_lately;
  return made.plies_lately >= made.plies_before + telling_plies ? std::optional{made}
                                                                : std::nullopt;
}

}  // namespace sparewell::care
