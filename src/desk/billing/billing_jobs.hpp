/// What the page "Billing" does in the clinic file. Each opens a Store of its own, and throws what
/// the store or the file system throws.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "desk/billing/billing_page.hpp"
#include "desk/billing/claim_files.hpp"
#include "desk/billing/month_close.hpp"
#include "desk/clinic_jobs.hpp"
#include "desk/stock_form.hpp"

namespace sparewell::desk {

[[nodiscard]] WorklistPtr compare_books_of(const Day& day);
/// The same findings with the answers that the clinic file holds now.
[[nodiscard]] WorklistPtr with_answers(const ClinicFile& file, const WorklistPtr& items);

/// By its first bytes; false for a file that cannot be read.
[[nodiscard]] bool is_x12_file(const std::filesystem::path& file);
[[nodiscard]] std::vector<std::string> saved_mappings(const ClinicFile& file, BillingFileKind kind);
/// Writes nothing when the request is a dry run.
[[nodiscard]] Expected<BillingFileOutcome> read_into(const ClinicFile& file,
                                                     const BillingFileRequest& request);

/// The months that can be closed, the newest first: those that are over and have any record.
[[nodiscard]] std::vector<Date> months_to_close(const Clinic& clinic, Date today);
/// The questions that the window asks before a month is closed.
[[nodiscard]] StockForm close_form(const Day& day, const WorklistPtr& items);
/// What changed in each closed month since, in lines; says where nothing did.
[[nodiscard]] std::vector<std::string> changes_since_closing(const ClinicFile& file);

}  // namespace sparewell::desk
