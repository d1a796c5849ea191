/// Plain words for the codes by which payers say why less was paid.
#pragma once

#include <string>
#include <string_view>

namespace sparewell::desk {

/// "not covered" for a reason, "the patient's share" for a group (CO, PR, OA, PI); "" for a code
/// that the table does not know.
[[nodiscard]] std::string adjustment_code_words(std::string_view code);

/// "CO:16; PI:151" as "CO 16, information is missing or wrong; PI 151, more pieces ...". Codes that
/// are not known are shown as they are.
[[nodiscard]] std::string adjustment_words(std::string_view reasons);

}  // namespace sparewell::desk
