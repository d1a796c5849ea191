#include "clinic/say.hpp"

#include <clocale>
#include <cstdlib>
#include <filesystem>

#include <libintl.h>

namespace sparewell {
namespace {
constexpr auto domain = "sparewell";
constexpr auto english_code = "en";
char sign_before_decimals = '.';
std::string spoken = english_code;
}  // namespace

char decimal_sign() {
  return sign_before_decimals;
}

void write_decimals_with(char sign) {
  sign_before_decimals = sign;
}

const char* said(const char* english) {
  // gettext answers "" with the catalogue's own description.
  return spoken == english_code || *english == '\0' ? english : dgettext(domain, english);
}

const char* said_of(const char* context, const char* english) {
  if (spoken == english_code) return english;
  // As pgettext does, which is a macro for literals only.
  const auto key = fmt::format("{}\004{}", context, english);
  const char* found = dgettext(domain, key.c_str());
  return found == key.c_str() ? english : found;
}

const char* said_n(const char* one, const char* many, unsigned long number) {
  if (spoken == english_code) return number == 1 ? one : many;
  return dngettext(domain, one, many, number);
}

bool speak(const std::string& language, const std::string& folder) {
  const auto catalogue = std::filesystem::path{folder} / language / "LC_MESSAGES" / "sparewell.mo";
  const bool there = language == english_code || std::filesystem::exists(catalogue);
  spoken = there ? language : english_code;
  // C.UTF-8 is there on every system; which catalogue is read is said by LANGUAGE alone, so that
  // no other locale has to be installed.
  std::setlocale(LC_MESSAGES, "C.UTF-8");
  setenv("LANGUAGE", spoken.c_str(), 1);
  bindtextdomain(domain, folder.c_str());
  bind_textdomain_codeset(domain, "UTF-8");
  return there;
}

const std::string& spoken_language() {
  return spoken;
}

}  // namespace sparewell
