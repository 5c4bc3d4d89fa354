#include <stdexcept>

#include <lcms2.h>

#include "tests/support/picture_files.h"

namespace picture_files {
namespace {

Bytes saved(cmsHPROFILE profile)
{
    cmsUInt32Number length = 0;
    if (profile == nullptr || cmsSaveProfileToMem(profile, nullptr, &length) == 0)
        throw std::runtime_error("Little CMS cannot make a test profile");
    Bytes bytes(length);
    cmsSaveProfileToMem(profile, bytes.data(), &length);
    cmsCloseProfile(profile);
    return bytes;
}

// What the invented inks look like: cyan as profile_cyan_bgr says, the other two full, black black.
int inksToLab(const cmsUInt16Number inks[], cmsUInt16Number lab[], void* lab_of_rgb)
{
    const auto ink = [&](int i) { return inks[i] / 65535.0; };
    double rgb[3];
    for (int c = 0; c < 3; ++c) {
        const double under_cyan = 1 - ink(0) * (1 - profile_cyan_bgr[2 - c] / 255.0);
        const double others = (c == 1 ? 1 - ink(1) : 1) * (c == 2 ? 1 - ink(2) : 1);
        rgb[c] = under_cyan * others * (1 - ink(3));
    }
    cmsCIELab value{};
    cmsDoTransform(lab_of_rgb, rgb, &value, 1);
    cmsFloat2LabEncoded(lab, &value);
    return 1;
}

}  // namespace

// D65 and the primaries of IEC 61966-2-1 (ITU-R BT.709), from memory.
Bytes linearProfile()
{
    const cmsCIExyY white = {0.3127, 0.3290, 1};
    const cmsCIExyYTRIPLE primaries = {{0.64, 0.33, 1}, {0.30, 0.60, 1}, {0.15, 0.06, 1}};
    cmsToneCurve* line = cmsBuildGamma(nullptr, 1.0);
    cmsToneCurve* curves[3] = {line, line, line};
    const Bytes bytes = saved(cmsCreateRGBProfile(&white, &primaries, curves));
    cmsFreeToneCurve(line);
    return bytes;
}

Bytes linearGreyProfile()
{
    cmsToneCurve* line = cmsBuildGamma(nullptr, 1.0);
    const Bytes bytes = saved(cmsCreateGrayProfile(cmsD50_xyY(), line));
    cmsFreeToneCurve(line);
    return bytes;
}

Bytes inkProfile()
{
    cmsHPROFILE srgb = cmsCreate_sRGBProfile(), lab = cmsCreateLab4Profile(nullptr);
    cmsHTRANSFORM lab_of_rgb =
        cmsCreateTransform(srgb, TYPE_RGB_DBL, lab, TYPE_Lab_DBL, INTENT_RELATIVE_COLORIMETRIC, 0);
    cmsPipeline* pipeline = cmsPipelineAlloc(nullptr, 4, 3);
    cmsStage* table = cmsStageAllocCLut16bit(nullptr, 5, 4, 3, nullptr);
    cmsStageSampleCLut16bit(table, inksToLab, lab_of_rgb, 0);
    cmsPipelineInsertStage(pipeline, cmsAT_END, cmsStageAllocToneCurves(nullptr, 4, nullptr));
    cmsPipelineInsertStage(pipeline, cmsAT_END, table);
    cmsPipelineInsertStage(pipeline, cmsAT_END, cmsStageAllocToneCurves(nullptr, 3, nullptr));
    cmsHPROFILE profile = cmsCreateProfilePlaceholder(nullptr);
    cmsSetProfileVersion(profile, 4.3);
    cmsSetDeviceClass(profile, cmsSigOutputClass);
    cmsSetColorSpace(profile, cmsSigCmykData);
    cmsSetPCS(profile, cmsSigLabData);
    cmsWriteTag(profile, cmsSigAToB0Tag, pipeline);
    cmsPipelineFree(pipeline);
    cmsDeleteTransform(lab_of_rgb);
    cmsCloseProfile(srgb);
    cmsCloseProfile(lab);
    return saved(profile);
}

}  // namespace picture_files
