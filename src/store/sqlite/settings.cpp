#include "store/sqlite/settings.hpp"

#include <charconv>
#include <map>

#include <SQLiteCpp/Column.h>
#include <fmt/format.h>

#include "clinic/say.hpp"

namespace sparewell::store::sqlite {
namespace {

constexpr const char* record_kind = "setting";

struct Stored {
  std::int64_t row = 0;
  std::string value;
};

std::map<std::string, Stored> stored_settings(Session& session) {
  const auto query = session.connection.query("SELECT key, id, value FROM settings");
  std::map<std::string, Stored> stored;
  while (query->executeStep()) {
    stored[query->getColumn(0).getString()] = {query->getColumn(1).getInt64(),
                                               query->getColumn(2).getString()};
  }
  return stored;
}

/// "150.00 EUR"; "" for none.
std::string amount_text(const std::optional<Money>& amount) {
  return amount ? text(*amount) : "";
}

std::string day_text(const std::optional<Date>& day) {
  return day ? iso_text(*day) : "";
}

std::map<std::string, std::string> as_texts(const ClinicSettings& settings) {
  return {{"name", settings.name},
          {"ship_to", settings.ship_to},
          {"currency", settings.currency.code},
          {"main_place", settings.main_place},
          {"service_target", fmt::format("{}", settings.service_target)},
          {"records_begin", day_text(settings.records_begin)},
          {"holding_rate", fmt::format("{}", settings.costs.holding_rate)},
          {"shortage_cost", amount_text(settings.costs.shortage)},
          {"line_cost", amount_text(settings.costs.line)},
          {"approval_above", amount_text(settings.approval_above)},
          {"billing_begins", day_text(settings.billing_begins)},
          {"papers_begin", day_text(settings.papers_begin)}};
}

double share_from(const std::string& key, const std::string& text) {
  double value = 0;
  const auto* end = text.data() + text.size();
  const auto result = std::from_chars(text.data(), end, value);
  if (result.ec != std::errc{} || result.ptr != end || !(value >= 0 && value <= 1)) {
    throw StoreFailure{StoreError::corrupt,
                       say("The setting {} holds \"{}\", which is not a number from 0 to "
                           "1; set it again.",
                           key, text)};
  }
  return value;
}

std::optional<Date> day_from(const std::string& key, const std::string& text) {
  const auto day = parse_iso_date(text);
  if (day || text.empty()) return day;
  throw StoreFailure{
      StoreError::corrupt,
      say("The setting {} holds \"{}\", which is not a day; set it again.", key, text)};
}

std::optional<Money> money_from(const std::string& key, const std::string& stored) {
  if (stored.empty()) return std::nullopt;
  const auto space = stored.find(' ');
  if (space != std::string::npos) {
    const auto currency = parse_currency(stored.substr(space + 1));
    const auto money = parse_money(stored.substr(0, space), currency.value_or(Currency{}));
    if (currency && money) return *money;
  }
  throw StoreFailure{
      StoreError::corrupt,
      say("The setting {} holds \"{}\", which is no sum of money; set it again.", key, stored)};
}

void insert(WriteSession& session, const std::string& key, const std::string& value) {
  {
    const auto query =
        session.connection.query("INSERT INTO settings (key, value) VALUES (:key, :value)");
    query->bind(":key", key);
    query->bind(":value", value);
    query->exec();
  }
  session.log.added(record_kind, session.connection.database().getLastInsertRowid());
}

void update(WriteSession& session, const std::string& key, const Stored& before,
            const std::string& value) {
  {
    const auto query =
        session.connection.query("UPDATE settings SET value = :value WHERE id = :id");
    query->bind(":value", value);
    query->bind(":id", before.row);
    query->exec();
  }
  session.log.changed(record_kind, before.row, {{"key", key}, {"value", before.value}});
}

}  // namespace

ClinicSettings read_settings(Session& session) {
  ClinicSettings settings;
  for (const auto& [key, stored] : stored_settings(session)) {
    if (key == "name") settings.name = stored.value;
    if (key == "ship_to") settings.ship_to = stored.value;
    if (key == "currency") settings.currency.code = stored.value;
    if (key == "main_place") settings.main_place = stored.value;
    if (key == "service_target") settings.service_target = share_from(key, stored.value);
    if (key == "holding_rate") settings.costs.holding_rate = share_from(key, stored.value);
    if (key == "shortage_cost") settings.costs.shortage = money_from(key, stored.value);
    if (key == "line_cost") settings.costs.line = money_from(key, stored.value);
    if (key == "records_begin") settings.records_begin = day_from(key, stored.value);
    if (key == "billing_begins") settings.billing_begins = day_from(key, stored.value);
    if (key == "papers_begin") settings.papers_begin = day_from(key, stored.value);
    if (key == "approval_above") settings.approval_above = money_from(key, stored.value);
  }
  return settings;
}

void write_settings(WriteSession& session, const ClinicSettings& settings) {
  if (!(settings.service_target >= 0 && settings.service_target <= 1)) {
    throw StoreFailure{StoreError::constraint,
                       said("The wanted chance of not running out must lie between 0 and 1.")};
  }
  if (!(settings.costs.holding_rate >= 0 && settings.costs.holding_rate <= 1)) {
    throw StoreFailure{
        StoreError::constraint,
        said("Keeping a piece for a year must cost between 0 and all of its price.")};
  }
  const auto stored = stored_settings(session);
  for (const auto& [key, value] : as_texts(settings)) {
    const auto found = stored.find(key);
    if (found == stored.end()) {
      insert(session, key, value);
    } else if (found->second.value != value) {
      update(session, key, found->second, value);
    }
  }
}

}  // namespace sparewell::store::sqlite
