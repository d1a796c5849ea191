#include "desk/local_formats.hpp"

#include <array>
#include <chrono>
#include <map>
#include <memory>
#include <mutex>
#include <stdexcept>
#include <utility>

#include <unicode/dcfmtsym.h>
#include <unicode/dtptngen.h>
#include <unicode/listformatter.h>
#include <unicode/numberformatter.h>
#include <unicode/smpdtfmt.h>
#include <unicode/timezone.h>

#include "clinic/say.hpp"
#include "desk/own_formats.hpp"

namespace sparewell::desk {
namespace {

/// Blanks that do not break would not be found by who types one.
std::string plain_utf8(const icu::UnicodeString& text) {
  icu::UnicodeString plain{text};
  plain.findAndReplace(u"\u00a0", u" ").findAndReplace(u"\u202f", u" ");
  std::string made;
  plain.toUTF8String(made);
  return made;
}

void require_success(UErrorCode status, const char* what) {
  if (U_FAILURE(status)) throw std::runtime_error{what};
}

class IcuFormats : public LocalFormats {
 public:
  explicit IcuFormats(const icu::Locale& locale)
      : numbers_{icu::number::NumberFormatter::withLocale(locale)} {
    UErrorCode status = U_ZERO_ERROR;
    const std::unique_ptr<icu::DateTimePatternGenerator> patterns{
        icu::DateTimePatternGenerator::createInstance(locale, status)};
    require_success(status, "no patterns of dates");
    constexpr std::array skeletons{u"yMMM", u"MMMd", u"yMMMd", u"yMMMEd"};
    for (std::size_t i = 0; i < skeletons.size(); ++i) {
      const auto pattern = patterns->getBestPattern(skeletons[i], status);
      dates_[i] = std::make_unique<icu::SimpleDateFormat>(pattern, locale, status);
      require_success(status, "no format of dates");
      dates_[i]->adoptTimeZone(icu::TimeZone::getGMT()->clone());
    }
    lists_.reset(icu::ListFormatter::createInstance(locale, status));
    require_success(status, "no format of lists");
    const icu::DecimalFormatSymbols symbols{locale, status};
    require_success(status, "no signs of numbers");
    const auto sign =
        plain_utf8(symbols.getConstSymbol(icu::DecimalFormatSymbols::kDecimalSeparatorSymbol));
    decimal_sign_ = sign == "," ? ',' : '.';
  }

  std::string date(Date day, DateShape shape) const override {
    // Shared by all threads, though a format is promised to be safe in one only; and most days are
    // asked for many times.
    const std::lock_guard lock{guard_};
    auto& text = written_[{day, shape}];
    if (text.empty()) {
      const auto seconds = std::chrono::duration_cast<std::chrono::seconds>(day.time_since_epoch());
      icu::UnicodeString made;
      dates_[static_cast<std::size_t>(shape)]->format(static_cast<double>(seconds.count()) * 1000.0,
                                                      made);
      text = plain_utf8(made);
    }
    return text;
  }

  std::string number(std::string_view decimal) const override {
    UErrorCode status = U_ZERO_ERROR;
    const auto made =
        numbers_.formatDecimal({decimal.data(), static_cast<int32_t>(decimal.size())}, status);
    const auto text = made.toString(status);
    return U_SUCCESS(status) ? plain_utf8(text) : std::string{decimal};
  }

  std::string amount(const Money& money) const override {
    UErrorCode status = U_ZERO_ERROR;
    const icu::CurrencyUnit unit{money.currency.code.c_str(), status};
    const auto decimals = money.currency.decimals();
    const auto made = numbers_.unit(unit)
                          .unitWidth(UNUM_UNIT_WIDTH_ISO_CODE)
                          .precision(icu::number::Precision::fixedFraction(decimals))
                          .formatDecimal(plain_text(money), status);
    const auto text = made.toString(status);
    return U_SUCCESS(status) ? plain_utf8(text) : sparewell::text(money);
  }

  std::string list(const std::vector<std::string>& parts) const override {
    std::vector<icu::UnicodeString> texts;
    texts.reserve(parts.size());
    for (const auto& part : parts) texts.push_back(icu::UnicodeString::fromUTF8(part));
    UErrorCode status = U_ZERO_ERROR;
    icu::UnicodeString made;
    lists_->format(texts.data(), static_cast<int32_t>(texts.size()), made, status);
    return plain_utf8(made);
  }

  char decimal_sign() const override { return decimal_sign_; }

 private:
  icu::number::LocalizedNumberFormatter numbers_;
  std::array<std::unique_ptr<icu::SimpleDateFormat>, 4> dates_;
  mutable std::mutex guard_;
  mutable std::map<std::pair<Date, DateShape>, std::string> written_;
  std::unique_ptr<icu::ListFormatter> lists_;
  char decimal_sign_ = '.';
};

std::shared_ptr<const LocalFormats> followed = own_formats();

}  // namespace

std::shared_ptr<const LocalFormats> formats_of(const std::string& locale) {
  if (locale.empty()) return own_formats();
  UErrorCode status = U_ZERO_ERROR;
  const auto known = icu::Locale::forLanguageTag(locale, status);
  if (U_FAILURE(status) || known.isBogus() || *known.getLanguage() == '\0') return nullptr;
  try {
    return std::make_shared<IcuFormats>(known);
  } catch (const std::runtime_error&) {
    return nullptr;
  }
}

bool follow_locale(const std::string& locale) {
  auto formats = formats_of(locale);
  if (!formats) return false;
  followed = std::move(formats);
  write_decimals_with(followed->decimal_sign());
  return true;
}

const LocalFormats& local_formats() {
  return *followed;
}

std::string country_name(const std::string& locale) {
  UErrorCode status = U_ZERO_ERROR;
  const auto known = icu::Locale::forLanguageTag(locale, status);
  icu::UnicodeString name;
  return plain_utf8(known.getDisplayCountry(known, name));
}

}  // namespace sparewell::desk
