#include "batch/context.hpp"

#include <chrono>
#include <ctime>
#include <iostream>

#include <fmt/format.h>
#include <pwd.h>
#include <unistd.h>

#include "desk/effect_words.hpp"

namespace sparewell::batch {
namespace {

Date local_date() {
  const std::time_t now = std::chrono::system_clock::to_time_t(std::chrono::system_clock::now());
  std::tm parts{};
  localtime_r(&now, &parts);
  return make_date(parts.tm_year + 1900, static_cast<unsigned>(parts.tm_mon + 1),
                   static_cast<unsigned>(parts.tm_mday));
}

}  // namespace

void print_notes(const wear::ClinicLife& fitted) {
  for (const std::string& note : desk::fit_notes(fitted)) std::cout << note << '\n';
}

Date date_option(const std::string& name, const std::string& text) {
  const auto date = parse_iso_date(text);
  if (!date) {
    throw WrongUse{fmt::format("{} '{}' is not a date; write it as YYYY-MM-DD.", name, text)};
  }
  return *date;
}

Money amount_option(std::string_view name, const std::string& text, const Currency& currency) {
  const auto amount = parse_money(text, currency);
  if (amount && amount->minor >= 0) return *amount;
  throw WrongUse{fmt::format("{} '{}' is not an amount of money in {}; write one such as 150.00.",
                             name, text, currency.code)};
}

Date Context::today() const {
  return today_text.empty() ? local_date() : date_option("--today", today_text);
}

std::unique_ptr<store::Store> Context::open(store::OpenMode mode) const {
  if (db.empty()) throw WrongUse{"Name the clinic file with --db FILE."};
  return store::open_clinic_file(db, mode, [] { return std::chrono::system_clock::now(); });
}

store::Author Context::author(std::string why) const {
  const passwd* entry = getpwuid(getuid());
  return {entry != nullptr ? entry->pw_name : fmt::format("user {}", getuid()), std::move(why)};
}

Clinic Context::clinic_on(Date day) const {
  const auto store = open(store::OpenMode::existing);
  return as_of(store::load_clinic(*store->read()), day);
}

desk::Assessment Context::forecast() const {
  const Date day = today();
  return desk::forecast(clinic_on(day), desk::built_in_priors(), day);
}

desk::Assessment Context::assess() const {
  const Date day = today();
  return desk::assess(clinic_on(day), desk::built_in_priors(), day);
}

}  // namespace sparewell::batch
