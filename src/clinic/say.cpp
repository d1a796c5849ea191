#include "clinic/say.hpp"

#include <clocale>
#include <cstdlib>

#include <libintl.h>

namespace sparewell {
namespace {
constexpr auto domain = "sparewell";
char sign_before_decimals = '.';
}  // namespace

char decimal_sign() {
  return sign_before_decimals;
}

void write_decimals_with(char sign) {
  sign_before_decimals = sign;
}

const char* said(const char* english) {
  // gettext answers "" with the catalogue's own description.
  return *english == '\0' ? english : dgettext(domain, english);
}

const char* said_n(const char* one, const char* many, unsigned long number) {
  return dngettext(domain, one, many, number);
}

void speak(const std::string& language, const std::string& folder) {
  // C.UTF-8 is there on every system; which catalogue is read is said by LANGUAGE alone, so that
  // no other locale has to be installed.
  std::setlocale(LC_MESSAGES, "C.UTF-8");
  setenv("LANGUAGE", language.c_str(), 1);
  bindtextdomain(domain, folder.c_str());
  bind_textdomain_codeset(domain, "UTF-8");
}

}  // namespace sparewell
